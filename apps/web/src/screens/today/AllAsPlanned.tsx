'use client'

import type { Task } from '@fryward/shared'
import { stationLabels } from '@fryward/words'
import { serverNow } from '@/base/api/server-clock.ts'
import { useQueuedTaskIds } from '@/base/outbox/queue-state.ts'
import { useMay, useRoom } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { earlyQuestion, isAhead } from '@/parts/tasks/task-state.ts'
import { plannedTasks, type StationGroup } from './arrange.ts'
import styles from './today.module.css'
import { useAllAsPlanned } from './use-all-as-planned.ts'

/** Fewer are as quickly done on their own lines. */
const fewest = 2

/** A whole stop done as the list says: one button for all that needs neither a number nor a caution read. */
export function AllAsPlanned({ group, titleId }: { group: StationGroup; titleId: string }) {
  const may = useMay('sign_off')
  const queued = useQueuedTaskIds()
  const { myRole, timeZone, rounds } = useRoom()
  const now = serverNow()
  const isToDo = (task: Task) =>
    !queued.has(task.id) && !isAhead(task, { now, timeZone }) && !earlyQuestion(task, { at: now, rounds })
  const tasks = plannedTasks(group.tasks, myRole).filter(isToDo)
  const stop = stationLabels[group.station]
  const { signOffAsPlanned, isBusy } = useAllAsPlanned()
  if (!may || (tasks.length < fewest && !isBusy)) return null
  const open = group.tasks.filter((task) => task.state === 'open').length
  const planned = tasks.length === open ? `All ${open} as planned` : `${tasks.length} of ${open} as planned`
  const label = isBusy ? 'One after the other…' : planned
  // The button goes with the last of them: the focus stays at the stop.
  const run = async () => {
    if (await signOffAsPlanned(tasks, stop)) document.getElementById(titleId)?.focus({ preventScroll: true })
  }
  return (
    <div className={styles.planned}>
      <Button isWide isBusy={isBusy} aria-label={`${label}: ${stop}`} onClick={() => void run()}>
        {label}
      </Button>
    </div>
  )
}
