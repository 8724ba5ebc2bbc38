/** Thrown for a number that a function here cannot answer for: it names the argument, its value and what is allowed. */
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

export type PedigreeProblem =
  | 'missing-id'
  | 'duplicate-id'
  | 'unknown-id'
  | 'same-parent-twice'
  | 'loop'
  | 'bad-date'
  | 'parent-younger-than-child'

/** Thrown for a pedigree that cannot be true, or an animal that it does not hold; it names the animal. */
export class PedigreeError extends RangeError {
  readonly problem: PedigreeProblem
  readonly animalId: string

  constructor({ problem, animalId, message }: { problem: PedigreeProblem; animalId: string; message: string }) {
    super(message)
    this.name = 'PedigreeError'
    this.problem = problem
    this.animalId = animalId
  }
}
