'use client'

import type { Day } from '@fryward/shared'
import { sayTime, stationLabels } from '@fryward/words'
import { useRoom, useVoice } from '@/base/room/room-context.tsx'
import { groupByStation, type RoundState, roundIdOf, sayLeft } from './arrange.ts'
import styles from './glance.module.css'
import { Progress } from './Progress.tsx'

/** The whole day beside the list: how far it is, and what each round still holds, stop by stop. */
export function DayAtAGlance({ day, rounds }: { day: Day; rounds: RoundState[] }) {
  const voice = useVoice()
  return (
    <section className={styles.glance} aria-labelledby="glance-title">
      <h2 id="glance-title">How the day stands</h2>
      <Progress day={day} />
      <ul className={styles.rounds}>
        {rounds.map((round) => (
          <li key={round.id}>
            <h3>
              {round.name} <small>{sayTime(round.startsAt, voice)}</small>
              <span>{sayLeft(round)}</span>
            </h3>
            <OpenStops day={day} roundId={round.id} />
          </li>
        ))}
      </ul>
    </section>
  )
}

function OpenStops({ day, roundId }: { day: Day; roundId: string }) {
  const { stationOrder } = useRoom()
  const tasks = day.tasks.filter((task) => roundIdOf(day, task) === roundId && task.state === 'open')
  const open = groupByStation(tasks, stationOrder)
  if (open.length === 0) return null
  return (
    <ul className={styles.stops}>
      {open.map((stop) => (
        <li key={stop.station}>
          {stationLabels[stop.station]} <span>{stop.tasks.length}</span>
        </li>
      ))}
    </ul>
  )
}
