import { type Task, undoMinutes } from '@fryward/shared'

const minuteMs = 60_000

export const isLate = (task: Task, now: Date): boolean => task.state === 'open' && new Date(task.lateAt) <= now

/** Withdrawn tasks are told apart: nobody has to do anything about them. */
export const isShown = (task: Task): boolean => task.state !== 'withdrawn'

/** The sign-off that stands: the newest that nobody has taken back. */
export const standingSignOff = (task: Task) => task.signOffs.filter((one) => one.undoneAt === null).at(-1)

/** When the person may still take it back, the instant until which; null otherwise. */
export function undoableUntil(task: Task, now: Date): Date | null {
  const since = task.state === 'done' ? standingSignOff(task)?.receivedAt : task.state === 'skipped' && task.closedAt
  if (!since) return null
  const until = new Date(new Date(since).getTime() + undoMinutes * minuteMs)
  return until > now ? until : null
}

/** Nothing has to be measured. */
export const needsNoNumber = (task: Task): boolean => task.fields.every((field) => !field.isRequired)

/** One tap does it when nothing has to be measured and no caution has to be read first. */
export const isOneTap = (task: Task): boolean => needsNoNumber(task) && task.cautions.length === 0
