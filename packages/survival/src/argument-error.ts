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

/** Throws unless the value is a whole number in [min, max]; NaN and infinities are refused. */
export function assertWhole(argument: string, value: number, { min = 0, max = Number.MAX_SAFE_INTEGER } = {}): void {
  if (Number.isSafeInteger(value) && value >= min && value <= max) return
  const upper = max === Number.MAX_SAFE_INTEGER ? '' : ` up to ${max}`
  throw new ArgumentError({ argument, value, allowed: `a whole number from ${min}${upper}` })
}

/** Throws unless the value is finite and at least `min`. */
export function assertAtLeast(argument: string, value: number, min: number): void {
  if (Number.isFinite(value) && value >= min) return
  throw new ArgumentError({ argument, value, allowed: `a finite number from ${min}` })
}

/** Throws unless 0 < level < 1. */
export function assertLevel(level: number): void {
  if (level > 0 && level < 1) return
  throw new ArgumentError({
    argument: 'level',
    value: level,
    allowed: 'a confidence level between 0 and 1, both excluded',
  })
}
