import * as z from 'zod/mini'
import { clutchIntents } from '../vocabulary.ts'

/** What is meant with a clutch from now on; the latest one that stands counts. */
export const DecisionDataSchema = z.strictObject({ intent: z.enum(clutchIntents) })
