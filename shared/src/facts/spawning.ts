import * as z from 'zod/mini'
import { HeadCountSchema } from '../primitives.ts'

export const SpawningDataSchema = z.strictObject({ eggs: z.optional(HeadCountSchema) })
