/** Thrown for any argument that a function here cannot answer for: it names the argument, its value and what is allowed. */
export class ArgumentError extends RangeError {
  readonly argument: string
  readonly value: unknown
  readonly allowed: string

  constructor({ argument, value, allowed }: { argument: string; value: unknown; allowed: string }) {
    super(`${argument} is ${String(value)}; allowed: ${allowed}`)
    this.name = 'ArgumentError'
    this.argument = argument
    this.value = value
    this.allowed = allowed
  }
}

/** An inclusive range with its unit and the reason for its ends, as an error message shows it. */
export type AllowedRange = { min: number; max: number; unit: string; because: string }

/** Throws unless the value is finite and inside the range. */
export function assertWithin(argument: string, value: number, { min, max, unit, because }: AllowedRange): void {
  if (Number.isFinite(value) && value >= min && value <= max) return
  throw new ArgumentError({ argument, value, allowed: `${min} to ${max} ${unit} (${because})`.replace('  ', ' ') })
}

/** Throws unless the value is finite and not negative. */
export function assertNotNegative(argument: string, value: number): void {
  if (Number.isFinite(value) && value >= 0) return
  throw new ArgumentError({ argument, value, allowed: 'a finite number from 0' })
}

/** Throws unless the value is finite and above 0. */
export function assertPositive(argument: string, value: number): void {
  if (Number.isFinite(value) && value > 0) return
  throw new ArgumentError({ argument, value, allowed: 'a finite number above 0' })
}

/** Throws unless the value is a whole number from 0. */
export function assertWhole(argument: string, value: number): void {
  if (Number.isSafeInteger(value) && value >= 0) return
  throw new ArgumentError({ argument, value, allowed: 'a whole number from 0' })
}
