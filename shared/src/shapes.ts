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

// zod measures whatever brings a `length`, and stumbles over one that is no number; only text and lists have one here.
function measured<C extends z.core.$ZodCheckMinLength | z.core.$ZodCheckMaxLength | z.core.$ZodCheckLengthEquals>(
  check: C,
) {
  check._zod.def.when = ({ value }) => typeof value === 'string' || Array.isArray(value)
  return check
}

/** Lengths of text count characters, those of lists items. `wanted` is what a person reads when it is too short. */
export const atLeast = (shortest: number, wanted?: string) => measured(z.minLength(shortest, wanted))
export const atMost = (longest: number) => measured(z.maxLength(longest))
export const exactly = (length: number) => measured(z.length(length))

type TextLimits = { shortest?: number; longest: number; wanted?: string }

/** Text as it was typed, spaces at its ends included. */
export const text = ({ shortest = 0, longest, wanted }: TextLimits) =>
  z.string().check(...lengthChecks({ shortest, longest, wanted }))

/** Text without the spaces at its ends; its length is counted without them. */
export const trimmedText = (limits: TextLimits) => z.string().check(z.trim(), ...lengthChecks(limits))

const lengthChecks = ({ shortest = 0, longest, wanted }: TextLimits) => [
  ...(shortest > 0 ? [atLeast(shortest, wanted)] : []),
  atMost(longest),
]
