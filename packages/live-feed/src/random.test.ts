import { expect, it } from 'vitest'
import { seededRandom } from './random.ts'

const wholes = 2 ** 32

/** sfc32 in whole numbers without bit tricks, as Doty-Humphrey wrote it (PractRand 0.95, `sfc.cpp`; from memory). */
function* sfc32(a: bigint, b: bigint, c: bigint): Generator<bigint> {
  const word = BigInt(wholes)
  for (let counter = 1n; ; counter += 1n) {
    const sum = (a + b + counter) % word
    ;[a, b, c] = [b ^ (b / 2n ** 9n), (c * 9n) % word, (((c * 2n ** 21n) % word) + c / 2n ** 11n + sum) % word]
    yield sum
  }
}

const golden = BigInt(Math.floor(wholes * ((Math.sqrt(5) - 1) / 2)))
const pi = BigInt(Math.floor(wholes * (Math.PI - 3)))

it.each([0, 1, 20_261_130, wholes - 1])('the seed %d gives the numbers of sfc32 from the sixteenth on', (seed) => {
  const published = sfc32(BigInt(seed), golden, pi)
  for (let round = 0; round < 15; round += 1) published.next()
  const random = seededRandom(seed)
  for (let draw = 0; draw < 200; draw += 1)
    expect(random.uniform()).toBe((Number(published.next().value) + 0.5) / wholes)
})

it('normals come in pairs on a circle whose radius has squared twice an exponential (Box & Muller 1958)', () => {
  const [random, uniforms] = [seededRandom(3), seededRandom(3)]
  for (let pair = 0; pair < 50; pair += 1) {
    const [x, y] = [random.normal(), random.normal()]
    const [first, second] = [uniforms.uniform(), uniforms.uniform()]
    expect(Math.exp(-(x * x + y * y) / 2)).toBeCloseTo(first, 9)
    expect((Math.atan2(y, x) / (2 * Math.PI) + 1) % 1).toBeCloseTo(second, 9)
  }
})

it.each([-1, 0.5, wholes, Number.NaN])('%d is no seed', (seed) => {
  expect(() => seededRandom(seed)).toThrow(`seed is ${seed}; allowed: a whole number from 0 to 4294967295`)
})
