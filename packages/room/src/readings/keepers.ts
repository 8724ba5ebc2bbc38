import { type Keeper, keepHere, keepLargeInThread } from '@fryward/readings'
import type { Database } from '@fryward/store'

/** Who keeps what devices send: whoever takes it, or for what is large a thread of its own. */
export type ReadingsKeeper = Keeper

export const keepReadingsHere = ({ pool }: Database): ReadingsKeeper => keepHere(pool)

/** @param onEnd hears of a thread that ended by itself. */
export const readingsThread = ({ pool, connectionString }: Database, onEnd: (error: Error) => void): ReadingsKeeper =>
  keepLargeInThread({ pool, connectionString, onEnd })
