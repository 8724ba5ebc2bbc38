import * as z from 'zod/mini'
import { CureChangeSchema } from '../food.ts'
import { InstantSchema } from '../primitives.ts'

/** What the room does so that food lasts, as it was shown on a plan; struck out again, it is as if nobody had chosen it. */
export const CureDataSchema = z.strictObject({ change: CureChangeSchema, planMadeAt: InstantSchema })
