'use client'

import type { Task } from '@fryward/shared'
import { sayTime, stationLabels } from '@fryward/words'
import { useState } from 'react'
import { useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { groupByStation, isQuiet, leadingTasks, nextRound, type RoundState } from './arrange.ts'
import { FirstOfAll } from './FirstOfAll.tsx'
import { SeenTo } from './SeenTo.tsx'
import { StationCard, stationTitleId } from './StationCard.tsx'
import { useFolded } from './use-folded.ts'

type Props = {
  tasks: Task[]
  now: Date
  /** Things of which a late task stands above. */
  isLate: ReadonlySet<string>
  rounds: RoundState[]
  roundId: string | undefined
  onChoose: (roundId: string) => void
}

/**
 * The stops of one round in walking order. Those that were quiet when the round was opened fold into one card at its end.
 */
export function Walk({ tasks, now, isLate, rounds, roundId, onChoose }: Props) {
  const first = leadingTasks(tasks, now)
  const groups = groupByStation(
    tasks.filter((task) => !first.includes(task)),
    useRoom().stationOrder,
  )
  const quiet = groups.filter((group) => isQuiet(group, { now, isLate })).map(({ station }) => station)
  const folded = useFolded(quiet)
  const [isUnfolded, unfold] = useState(false)
  return (
    <>
      <WhatNext rounds={rounds} roundId={roundId} onChoose={onChoose} />
      {first.length > 0 && <FirstOfAll tasks={first} now={now} />}
      {groups
        .filter(({ station }) => isUnfolded || !folded.includes(station))
        .map((group) => (
          <StationCard key={group.station} group={group} now={now} isLate={isLate} />
        ))}
      <SeenTo
        names={folded.map((station) => stationLabels[station].toLowerCase())}
        lead="All seen to"
        firstId={folded[0] && stationTitleId(folded[0])}
        isUnfolded={isUnfolded}
        onUnfold={unfold}
      />
    </>
  )
}

/** A round with nothing left says so, and what comes next. */
function WhatNext({ rounds, roundId, onChoose }: Pick<Props, 'rounds' | 'roundId' | 'onChoose'>) {
  const voice = useVoice()
  const round = rounds.find((one) => one.id === roundId)
  if (!round || round.open > 0) return null
  const next = nextRound(rounds, roundId)
  return (
    <Notice>
      <p>{sayRest(round)}</p>
      {next && (
        <Button onClick={() => onChoose(next.id)}>
          {next.startsAt > round.startsAt
            ? `${next.name} is next, ${sayTime(next.startsAt, voice)}, ${next.open} open`
            : `${next.name} still has ${next.open} open`}
        </Button>
      )}
    </Notice>
  )
}

function sayRest({ name, late, all }: RoundState): string {
  if (all === 0) return `${name}: nothing is due.`
  if (late === 0) return `${name}: all seen to.`
  return `${name}: ${late === 1 ? 'the late one stands' : `the ${late} late ones stand`} above, the rest is seen to.`
}
