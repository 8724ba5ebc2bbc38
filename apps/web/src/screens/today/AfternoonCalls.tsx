'use client'

import type { Day } from '@fryward/shared'
import { afternoonCalls } from '@fryward/words'
import { useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Link } from '@/base/ui/Link.tsx'
import { Moon } from '@/base/ui/Moon.tsx'
import { useOutlook } from '@/parts/food/use-outlook.ts'
import styles from './today.module.css'

/** From about midday on: the clutches that may hatch tonight, each with what the evening asks for. */
export function AfternoonCalls({ day }: { day: Day }) {
  const room = useRoom()
  const voice = useVoice()
  const outlook = useOutlook()
  if (!outlook || outlook.days[0]?.date !== day.today) return null
  const calls = afternoonCalls(outlook, { today: day.today, voice, pullOf: (id) => pullOf(day, id) })
  return calls.map(({ clutchId, probability, title, pull, food, otherChoice }) => (
    <section key={clutchId} className={styles.call} aria-label={title}>
      <h2>
        <Moon probability={probability} /> {title}
      </h2>
      <p className={styles.pull}>{pull}</p>
      <ul>
        {food.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <p>
        {otherChoice} <Link href={`/rooms/${room.id}/clutches/${clutchId}`}>Decide</Link>
      </p>
    </section>
  ))
}

/** What the list of the day says of moving the nest. */
function pullOf({ tasks }: Day, clutchId: string) {
  const pull = tasks.find(({ ruleId, subject }) => ruleId === 'clutch-pull-nest' && subject.id === clutchId)
  if (!pull || (pull.state !== 'open' && pull.state !== 'done')) return null
  return { dueAt: pull.dueAt, isDone: pull.state === 'done' }
}
