import { ArgumentError } from './errors.ts'

function assertWholeFromOne(argument: string, value: number): void {
  if (Number.isSafeInteger(value) && value >= 1) return
  throw new ArgumentError({ argument, value, allowed: 'a whole number from 1' })
}

/**
 * Effective population size of a stock with so many breeding males and females: 4 Nm Nf / (Nm + Nf), in animals.
 * Wright 1931, Genetics 16:97-159. Random mating is assumed and families of random size.
 * @throws ArgumentError unless both are whole numbers from 1.
 */
export function effectiveSize({ males, females }: { males: number; females: number }): number {
  assertWholeFromOne('males', males)
  assertWholeFromOne('females', females)
  return (4 * males * females) / (males + females)
}

/**
 * Inbreeding that each generation adds, as a share of what is not yet inbred: 1 / (2 Ne). Wright 1931.
 * @throws ArgumentError for an effective size under 0.5, which would add more than all.
 */
export function inbreedingPerGeneration({ effectiveSize: size }: { effectiveSize: number }): number {
  if (Number.isFinite(size) && size >= 0.5) return 1 / (2 * size)
  throw new ArgumentError({ argument: 'effectiveSize', value: size, allowed: 'a finite number from 0.5' })
}
