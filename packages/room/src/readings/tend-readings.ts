import { dropOldMonths, makePartitions, rollUp } from '@fryward/readings'
import type { Context } from '../context.ts'

/** The minute's work on readings: hours added up. */
export const addUpReadings = ({ database }: Context): Promise<number> => rollUp(database.pool)

/** The months that readings go into, made ahead. */
export const makeRoomForReadings = ({ database, now }: Context): Promise<string[]> => makePartitions(database.pool, now)

/** Single readings that are older than this server keeps them; their hours stay. */
export const dropOldReadings = ({ database, now }: Context, keepMonths: number): Promise<string[]> =>
  dropOldMonths(database.pool, { now, keepMonths })
