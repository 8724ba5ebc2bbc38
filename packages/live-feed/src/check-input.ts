import { ArgumentError } from '@fryward/survival'

export type Range = { min?: number; max?: number; unit?: string }

function describe({ min, max, unit = '' }: Range): string {
  if (min !== undefined && max !== undefined) return `a number from ${min} to ${max} ${unit}`.trimEnd()
  const from = min === undefined ? '' : ` from ${min}`
  const to = max === undefined ? '' : ` up to ${max}`
  return `a finite number${from}${to} ${unit}`.trimEnd()
}

/** Throws unless the value is finite and within [min, max]. */
export function assertInRange(argument: string, value: number, range: Range = {}): void {
  const { min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY } = range
  if (Number.isFinite(value) && value >= min && value <= max) return
  throw new ArgumentError({ argument, value, allowed: describe(range) })
}

/** Throws unless the value is finite and above 0. */
export function assertPositive(argument: string, value: number, unit = ''): void {
  if (Number.isFinite(value) && value > 0) return
  throw new ArgumentError({ argument, value, allowed: `a finite number above 0 ${unit}`.trimEnd() })
}

/** Throws unless the value is a whole number within [min, max]. */
export function assertWholeNumber(argument: string, value: number, { min = 0, max = Number.MAX_SAFE_INTEGER } = {}) {
  if (Number.isSafeInteger(value) && value >= min && value <= max) return
  const upper = max === Number.MAX_SAFE_INTEGER ? '' : ` to ${max}`
  throw new ArgumentError({ argument, value, allowed: `a whole number from ${min}${upper}` })
}

/** Throws unless 0 <= value < 1: a share that leaves something behind. */
export function assertShare(argument: string, value: number): void {
  if (value >= 0 && value < 1) return
  throw new ArgumentError({ argument, value, allowed: 'a share from 0 to below 1' })
}

/** Throws unless the list has at least `min` entries. */
export function assertLength(argument: string, list: readonly unknown[], min = 1): void {
  if (list.length >= min) return
  throw new ArgumentError({
    argument: `${argument}.length`,
    value: list.length,
    allowed: `${min} or more entries`,
  })
}
