/**
 * The shapes that most fields have, under short names. The schemas are written with zod's small form, whose checks are
 * functions: what no schema uses stays out of the scripts that a phone loads.
 */
import * as z from 'zod/mini'

/** A value to fall back on when the field is left out. */
export { _default as withDefault } from 'zod/mini'

/** Both ends are allowed. */
export const numberBetween = (minimum: number, maximum: number) =>
  z.number().check(z.minimum(minimum), z.maximum(maximum))

export const aboveZero = (maximum: number) => z.number().check(z.gt(0), z.maximum(maximum))

/** Both ends are allowed. */
export const wholeBetween = (minimum: number, maximum: number) => z.int().check(z.minimum(minimum), z.maximum(maximum))

/** The same from the text of an address, where numbers come as digits. */
export const wholeInAddress = (minimum: number, maximum: number) =>
  z.coerce.number().check(z.int(), z.minimum(minimum), z.maximum(maximum))

/** Lengths count UTF-16 code units, as browsers do. `wanted` is what a person reads when the text is too short. */
type TextLimits = { shortest?: number; longest: number; wanted?: string }

/** Text as it was typed, spaces at its ends included. */
export const text = ({ shortest = 0, longest, wanted }: TextLimits) =>
  z.string().check(...lengthChecks({ shortest, longest, wanted }))

/** Text without the spaces at its ends; its length is counted without them. */
export const trimmedText = (limits: TextLimits) => z.string().check(z.trim(), ...lengthChecks(limits))

const lengthChecks = ({ shortest = 0, longest, wanted }: TextLimits) => [
  ...(shortest > 0 ? [z.minLength(shortest, wanted)] : []),
  z.maxLength(longest),
]
