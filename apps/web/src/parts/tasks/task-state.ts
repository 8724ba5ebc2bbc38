import { earlyFeedQuestion, type Round, type Task, undoMinutes } from '@fryward/shared'
import { toPlainDate } from '@fryward/words'
import { serverNow } from '@/base/api/server-clock.ts'

const minuteMs = 60_000

export const isLate = (task: Task, now: Date): boolean => task.state === 'open' && new Date(task.lateAt) <= now

/** A task of a day to come is for reading: its amounts still follow from what today brings. */
export const isAhead = (task: Pick<Task, 'onDate'>, { now, timeZone }: { now: Date; timeZone: string }): boolean =>
  task.onDate > toPlainDate(now, timeZone)

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

/** Whether what was just signed off can be taken back: what came after its task had closed is struck out on its page instead. */
export const isUndoable = (task: Task): boolean => undoableUntil(task, serverNow()) !== null

/** Asked before a feed is signed off hours before its round; null where nothing is. */
export const earlyQuestion = (task: Task, { at, rounds }: { at: Date; rounds: readonly Round[] }): string | null =>
  earlyFeedQuestion(task, {
    at,
    roundName: rounds.find(({ id }) => id === task.roundId)?.name ?? 'a later round',
  })

/** Nothing has to be measured. */
export const needsNoNumber = (task: Task): boolean => task.fields.every((field) => !field.isRequired)

/** A count may be left out, though what follows is measured by it: it is asked for, not tapped away. */
export const asksForCount = (task: Task): boolean => task.fields.some(({ type }) => type === 'count')

/** One tap does it when nothing has to be measured, nothing is to be counted, and no caution has to be read first. */
export const isOneTap = (task: Task): boolean =>
  needsNoNumber(task) && !asksForCount(task) && task.cautions.length === 0
