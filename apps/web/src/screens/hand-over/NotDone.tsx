'use client'

import { WorrySign } from '@/base/ui/Notice.tsx'
import { Section } from '@/base/ui/Page.tsx'
import styles from './hand-over.module.css'
import { UndoneText } from './UndoneText.tsx'
import type { Undone } from './what-to-watch.ts'

const groups: { title: string; isIn: (task: Undone) => boolean }[] = [
  { title: 'Late now', isIn: (task) => task.isLate },
  { title: 'Skipped', isIn: (task) => task.state === 'skipped' },
  { title: 'Passed, not done', isIn: (task) => task.state === 'missed' },
]
/** Of each kind; the rest is folded, so that the page stays one that is read. */
const shownFirst = 5

type Props = {
  notDone: Undone[]
  /** How many there are with those that are told elsewhere on the page. */
  all: number
  now: Date
}

/** What was due and is not done: late, skipped with the reason, passed by. */
export function NotDone({ notDone, all, now }: Props) {
  if (notDone.length === 0 && all > 0) return null
  return (
    <Section title="Not done">
      {all === 0 && <p className={styles.soft}>Everything since yesterday morning was seen to.</p>}
      {groups.map(({ title, isIn }) => {
        const tasks = notDone.filter(isIn)
        return (
          tasks.length > 0 && (
            <div key={title}>
              <h3 className={styles.kind}>
                {title === 'Late now' && <WorrySign />}
                {title}, {tasks.length}
              </h3>
              <Undones tasks={tasks.slice(0, shownFirst)} now={now} />
              {tasks.length > shownFirst && (
                <details className={styles.fold}>
                  <summary>{tasks.length - shownFirst} more</summary>
                  <Undones tasks={tasks.slice(shownFirst)} now={now} />
                </details>
              )}
            </div>
          )
        )
      })}
    </Section>
  )
}

function Undones({ tasks, now }: { tasks: Undone[]; now: Date }) {
  return (
    <ul className={styles.list}>
      {tasks.map((task) => (
        <li key={task.taskId}>
          <UndoneText task={task} now={now} />
        </li>
      ))}
    </ul>
  )
}
