'use client'

import type { Day, Task } from '@fryward/shared'
import Link from 'next/link'
import { useId, useState } from 'react'
import { useMay, useRoom } from '@/features/rooms/room-context.tsx'
import { Notice } from '@/ui/Notice.tsx'
import { currentRoundId, groupByStation, isLate, isShown, lateTasks, roundStates } from './arrange.ts'
import { Gaps } from './Gaps.tsx'
import { LateList } from './LateList.tsx'
import { Progress } from './Progress.tsx'
import { RoundTabs } from './RoundTabs.tsx'
import { StationCard } from './StationCard.tsx'
import styles from './today.module.css'
import { WithdrawnList } from './WithdrawnList.tsx'

export function DayList({ day, now }: { day: Day; now: Date }) {
  const [chosenRoundId, chooseRound] = useState<string>()
  const panelId = useId()
  const may = useMay('sign_off')
  const roundId = day.rounds.some((round) => round.id === chosenRoundId) ? chosenRoundId : currentRoundId(day, now)
  if (day.tasks.length === 0) return <NothingDue day={day} />
  const late = lateTasks(day, now)
  const inRound = day.tasks.filter((task) => task.roundId === roundId)
  return (
    <>
      <Progress day={day} />
      {!may && <Notice>You are reading along: signing off is for caretakers and stand-ins.</Notice>}
      {late.length > 0 && <LateList tasks={late} day={day} now={now} />}
      <Gaps day={day} />
      <RoundTabs rounds={roundStates(day)} chosen={roundId} onChoose={chooseRound} panelId={panelId} />
      <div id={panelId} role="tabpanel" aria-labelledby={`${panelId}-${roundId}`} className={styles.walk}>
        <Walk
          tasks={inRound.filter((task) => isShown(task) && !isLate(task, now))}
          now={now}
          hasLate={late.length > 0}
        />
        <WithdrawnList tasks={inRound.filter((task) => !isShown(task))} />
      </div>
    </>
  )
}

function Walk({ tasks, now, hasLate }: { tasks: Task[]; now: Date; hasLate: boolean }) {
  if (tasks.length === 0)
    return <Notice>{hasLate ? 'Nothing else in this round.' : 'Nothing is due in this round.'}</Notice>
  return groupByStation(tasks).map((group) => <StationCard key={group.station} group={group} now={now} />)
}

function NothingDue({ day }: { day: Day }) {
  const room = useRoom()
  const may = useMay('manage')
  return (
    <>
      <Notice title={day.isOpened ? 'Nothing is due' : 'This list is not opened yet'}>
        <p>
          {day.isOpened
            ? 'A list follows from what lives in the room: cultures, pairs, clutches and larvae.'
            : 'Lists open a day ahead.'}
        </p>
        {day.isOpened && may && <Link href={`/rooms/${room.id}/add`}>Add a tank, a culture or a pair</Link>}
      </Notice>
      <Gaps day={day} />
    </>
  )
}
