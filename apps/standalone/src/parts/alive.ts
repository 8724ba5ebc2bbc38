import { z } from 'zod'

/** What the supervisor asks a part, and what a part answers. */
export const areYouAlive = { areYouAlive: true } as const
export const alive = { alive: true } as const

export const AliveQuestionSchema = z.object({ areYouAlive: z.literal(true) })
export const AliveSchema = z.object({ alive: z.literal(true) })
