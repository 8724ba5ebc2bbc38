import type { RefusedReading } from '@fryward/shared'

/** One reading as it was posted, before anybody asks which gauge it is. */
export type PostedReading = {
  /** Its place in the post, from 0. */
  index: number
  /** What the device calls the gauge. */
  gauge: string
  /** Milliseconds since 1970. */
  at: number
  value: number
  unit: string | null
}

/** How a post came. */
export type Arrival = {
  nowMs: number
  /** It waited on its way, nobody knows how long: what carries no time of its own is of no time. */
  isLate?: boolean
  /** The gauge that it is of where it names none. */
  gauge?: string
}

export type Post = { readings: PostedReading[]; refused: RefusedReading[] }

/** A post that cannot be read at all; `message` is a sentence for whoever builds the device. */
export class UnreadablePost extends Error {
  override name = 'UnreadablePost'
}

/** More than that in one post is split by whoever sends it. */
export const mostReadings = 20_000
export const tooMany = `A post holds at most ${mostReadings} readings; send the rest in another.`
