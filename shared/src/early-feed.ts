import type { Instant } from './primitives.ts'
import type { Task } from './task.ts'

// A feed given so long before its round is missing then, and two come together. common practice
const earlyHours = 3
const hourMs = 3_600_000

/** The name by which somebody confirms that a feed was given long before its round. */
export const earlyFeedName = 'early'

type Feed = Pick<Task, 'verb' | 'dueAt'>

/** The question before a feed is signed off hours before its round; null where there is nothing to ask. */
export function earlyFeedQuestion(
  { verb, dueAt }: Feed,
  about: { at: Instant | Date; roundName: string },
): string | null {
  const hours = (Date.parse(dueAt) - new Date(about.at).getTime()) / hourMs
  if (verb !== 'feed' || hours < earlyHours) return null
  return `This feed is for ${about.roundName}, ${Math.round(hours)} hours from now. Given now, it is missing then. Was it really given now?`
}
