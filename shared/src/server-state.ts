import * as z from 'zod/mini'
import { InstantSchema } from './primitives.ts'

/** `little` is told, and while it is `full` nothing more is written; reading goes on. */
export const diskStates = ['plenty', 'little', 'full'] as const
export type DiskState = (typeof diskStates)[number]

/** How the machine itself is doing, for whoever claimed the server. */
export const ServerStateSchema = z
  .object({
    /** Of the data folder; null where the server was started without one. */
    disk: z.nullable(z.object({ state: z.enum(diskStates), freeBytes: z.number(), totalBytes: z.number() })),
    /** Parts that ended by themselves or hung in the last week, each with the last of it. */
    troubles: z.array(z.object({ part: z.string(), at: InstantSchema, sentence: z.string() })),
  })
  .register(z.globalRegistry, { id: 'ServerState' })
export type ServerState = z.infer<typeof ServerStateSchema>
