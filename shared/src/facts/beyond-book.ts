import * as z from 'zod/mini'
import { ReasonSchema } from '../primitives.ts'

/**
 * Why more left than the book said was there. With it the book is corrected by the fact itself; without it the fact is
 * answered with needs_confirmation. To count first is the other way out.
 */
export const BeyondBookSchema = z.optional(ReasonSchema)
