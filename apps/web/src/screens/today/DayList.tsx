'use client'

import type { Day } from '@fryward/shared'
import { Suspense, useId } from 'react'
import { useMay, useRoom } from '@/base/room/room-context.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { Link } from '@/base/ui/Link.tsx'
import { late } from '@/base/ui/late.ts'
import { Notice } from '@/base/ui/Notice.tsx'
import { useIsWide } from '@/base/ui/use-is-wide.ts'
import { useOutlook } from '@/parts/food/use-outlook.ts'
import { isLate, isShown } from '@/parts/tasks/task-state.ts'
import { lateTasks, roundIdOf, roundStates, withdrawnOn } from './arrange.ts'
import { Gaps } from './Gaps.tsx'
import { LateList } from './LateList.tsx'
import { Progress } from './Progress.tsx'
import { RoundTabs } from './RoundTabs.tsx'
import styles from './today.module.css'
import { useRoundChoice } from './use-round-choice.ts'
import { Walk } from './Walk.tsx'
import { WithdrawnList } from './WithdrawnList.tsx'

// What most days have nothing of is not brought along: its script comes once there is something to say.
const FoodWorry = late(() => import('./FoodWorry.tsx'), 'FoodWorry')
const AfternoonCalls = late(() => import('./AfternoonCalls.tsx'), 'AfternoonCalls')
const DayAtAGlance = late(() => import('./DayAtAGlance.tsx'), 'DayAtAGlance')

/** What is late, then the round as a walk. Beside it on a wide screen, where a sheet opens too, how the day stands. */
export function DayList({ day, now }: { day: Day; now: Date }) {
  const { roundId, chooseRound } = useRoundChoice(day, now)
  const isWide = useIsWide()
  const panelId = useId()
  const may = useMay('sign_off')
  const { stationOrder, timeZone } = useRoom()
  if (day.tasks.length === 0) return <NothingDue day={day} />
  const late = lateTasks(day.tasks, stationOrder, now)
  const rounds = roundStates(day, now)
  const inRound = day.tasks.filter((task) => roundIdOf(day, task) === roundId)
  const withdrawn = withdrawnOn(inRound, { date: day.date, timeZone })
  return (
    <div className={styles.day}>
      <div className={styles.list}>
        <Calls day={day} now={now} />
        {!isWide && <Progress day={day} />}
        {day.date > day.today && (
          <Notice>This list is for reading: it is signed off on its day, and its amounts may change until then.</Notice>
        )}
        {!may && <Notice>You are reading along: signing off is for caretakers and stand-ins.</Notice>}
        {late.length > 0 && <LateList tasks={late} now={now} />}
        {!isWide && <Food day={day} />}
        {!isWide && <Gaps day={day} />}
        <RoundTabs rounds={rounds} chosen={roundId} onChoose={chooseRound} panelId={panelId} />
        <div id={panelId} role="tabpanel" aria-labelledby={`${panelId}-${roundId}`} className={styles.walk}>
          {/* A round of its own begins with its own folds closed. */}
          <Walk
            key={roundId}
            tasks={inRound.filter((task) => isShown(task) && !isLate(task, now))}
            isLate={new Set(late.map(({ subject }) => subject.id))}
            {...{ now, rounds, roundId }}
            onChoose={chooseRound}
          />
          {withdrawn.length > 0 && <WithdrawnList tasks={withdrawn} />}
        </div>
      </div>
      {isWide && (
        <div className={styles.side}>
          <Food day={day} />
          <Gaps day={day} />
          <Suspense fallback={<Bones heights={[14]} />}>
            <DayAtAGlance day={day} rounds={rounds} />
          </Suspense>
        </div>
      )}
    </div>
  )
}

// Lights go off in the evening: eight hours before is about midday. common practice
const callHours = 8
const hourMs = 3_600_000

/** From midday until dark, on today's own list, where a clutch may hatch. */
function Calls({ day, now }: { day: Day; now: Date }) {
  const leftMs = Date.parse(day.lightsOffAt) - now.getTime()
  const isTime = day.date === day.today && leftMs >= 0 && leftMs <= callHours * hourMs
  const outlook = useOutlook({ isAsked: isTime })
  if (!isTime || !outlook?.eaters.some(({ kind }) => kind === 'clutch')) return null
  return (
    <Suspense>
      <AfternoonCalls day={day} />
    </Suspense>
  )
}

/** On today's own list alone: what is ahead is seen from here. */
function Food({ day }: { day: Day }) {
  const isToday = day.date === day.today
  const outlook = useOutlook({ isAsked: isToday })
  if (!isToday || !outlook?.worry) return null
  return (
    <Suspense>
      <FoodWorry />
    </Suspense>
  )
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
