import type { Task } from '@fryward/shared'
import { sayTime } from '@fryward/words'
import { useState } from 'react'
import { useVoice } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { WorrySign } from '@/base/ui/Notice.tsx'
import lineStyles from '@/parts/tasks/line.module.css'
import { SubjectName } from '@/parts/tasks/SubjectName.tsx'
import { TaskLine } from '@/parts/tasks/TaskLine.tsx'
import styles from './late.module.css'

/** So many leave the round below on a phone's first screen. One more than these is shown rather than folded. */
const shownFirst = 4

/** What should have been done by now, of any round: one line each in the same walk, cleanest water first. */
export function LateList({ tasks, now }: { tasks: Task[]; now: Date }) {
  const voice = useVoice()
  const [isWhole, showWhole] = useState(false)
  const dues = new Set(tasks.map((task) => sayTime(task.dueAt, voice)))
  const [shared] = dues
  const folded = isWhole || tasks.length <= shownFirst + 1 ? 0 : tasks.length - shownFirst
  return (
    <section className={styles.late} aria-labelledby="late-title">
      <h2 id="late-title" className={styles.title}>
        <WorrySign /> {tasks.length} late
        {dues.size === 1 && <small>due {shared}</small>}
      </h2>
      <ul className={lineStyles.lines}>
        {tasks.slice(0, tasks.length - folded).map((task) => (
          <TaskLine
            key={task.id}
            task={task}
            now={now}
            name={
              <SubjectName
                subject={task.subject}
                note={dues.size === 1 ? undefined : `due ${sayTime(task.dueAt, voice)}`}
              />
            }
          />
        ))}
      </ul>
      {folded > 0 && (
        <Button variant="subtle" isWide aria-expanded={false} onClick={() => showWhole(true)}>
          {folded} more, late
        </Button>
      )}
    </section>
  )
}
