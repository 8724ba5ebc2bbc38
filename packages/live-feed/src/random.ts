import { assertWholeNumber } from './check-input.ts'

export type Random = {
  /** Uniform in (0, 1). */
  uniform: () => number
  /** Standard normal. */
  normal: () => number
}

/**
 * Seeded random numbers: the same seed gives the same sequence on every machine.
 * Generator sfc32 (Doty-Humphrey, PractRand), 15 rounds of warm-up; normals by Box & Muller 1958, Ann. Math. Stat.
 * 29:610-611.
 * @throws ArgumentError unless seed is a whole number from 0 to 2^32 - 1.
 */
export function seededRandom(seed: number): Random {
  assertWholeNumber('seed', seed, { min: 0, max: 0xffffffff })
  let a = seed | 0
  let b = 0x9e3779b9 | 0
  let c = 0x243f6a88 | 0
  let counter = 1
  const next = () => {
    const sum = (((a + b) | 0) + counter) | 0
    counter = (counter + 1) | 0
    a = b ^ (b >>> 9)
    b = (c + (c << 3)) | 0
    c = (c << 21) | (c >>> 11)
    c = (c + sum) | 0
    return sum >>> 0
  }
  for (let round = 0; round < 15; round += 1) next()
  const uniform = () => (next() + 0.5) / 4294967296
  let spare: number | null = null
  const normal = () => {
    if (spare !== null) {
      const value = spare
      spare = null
      return value
    }
    const radius = Math.sqrt(-2 * Math.log(uniform()))
    const angle = 2 * Math.PI * uniform()
    spare = radius * Math.sin(angle)
    return radius * Math.cos(angle)
  }
  return { uniform, normal }
}
