import fc from 'fast-check'
import { Temporal } from 'temporal-polyfill'
import { describe, expect, it } from 'vitest'
import { hourMs } from '../calendar/elapsed.ts'
import { speciesProfiles } from '../species/index.ts'
import { type HatchNightsInput, hatchNights } from './hatch-nights.ts'

/** Evenly drawn: fc.double draws bit patterns, nearly all of them next to 0 where that is allowed. */
const between = (min: number, max: number) => fc.nat(1e6).map((n) => min + ((max - min) * n) / 1e6)

const startMs = Date.parse('2026-01-01T00:00:00Z')
const iso = (ms: number): string => new Date(ms).toISOString()

const nestSpecies = speciesProfiles.filter(({ care }) => care.value === 'nest').map(({ id }) => id)
const zones = ['UTC', 'Europe/Lisbon', 'America/New_York', 'Asia/Kolkata', 'Australia/Lord_Howe', 'Pacific/Apia']

const reading = (fromMs: number) =>
  fc.record({
    at: fc.integer({ min: -48, max: 400 }).map((hours) => iso(fromMs + hours * hourMs)),
    temperatureC: between(20, 33),
  })

/** Spawnings over a whole year, so that clock changes fall within an incubation. */
const clutch: fc.Arbitrary<HatchNightsInput> = fc
  .record({ hours: fc.integer({ min: 0, max: 8_760 }), zone: fc.constantFrom(...zones) })
  .chain(({ hours, zone }) =>
    fc.record({
      spawnedAt: fc.constant(iso(startMs + hours * hourMs)),
      temperatures: fc.array(reading(startMs + hours * hourMs), { minLength: 1, maxLength: 12 }),
      lightsOff: fc.record({
        time: fc.constantFrom('00:30', '02:30', '17:45', '19:00', '21:30', '23:59'),
        timeZone: fc.constant(zone),
      }),
      species: fc.constantFrom(...nestSpecies),
      pairHistory: fc.array(
        fc.record({
          durationDays: between(4, 12),
          temperatureC: between(24, 30),
        }),
        { maxLength: 4 },
      ),
      setPointC: fc.option(between(24, 30), { nil: undefined }),
    }),
  )

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0)

describe('hatchNights', () => {
  it('gives non-negative probabilities and shares that sum to 1, one entry for each date in order', () => {
    fc.assert(
      fc.property(clutch, (input) => {
        const { nights } = hatchNights(input)
        expect(nights.every(({ probability, shareHatching }) => probability >= 0 && shareHatching >= 0)).toBe(true)
        expect(Math.abs(sum(nights.map(({ probability }) => probability)) - 1)).toBeLessThan(1e-9)
        expect(Math.abs(sum(nights.map(({ shareHatching }) => shareHatching)) - 1)).toBeLessThan(1e-9)
        const dates = nights.map(({ date }) => date)
        expect(dates).toEqual([...new Set(dates)].sort())
      }),
      { numRuns: 200 },
    )
  })

  it('never expects a later hatch in warmer water', () => {
    fc.assert(
      fc.property(clutch, between(0, 5), (input, warmerC) => {
        const temperatures = input.temperatures.map(({ at, temperatureC }) => ({
          at,
          temperatureC: temperatureC + warmerC,
        }))
        const setPointC = input.setPointC === undefined ? undefined : input.setPointC + warmerC
        const cool = hatchNights(input)
        const warm = hatchNights({ ...input, temperatures, setPointC })
        for (const { date } of cool.nights) {
          const hatchedBy = (nights: typeof cool.nights) =>
            sum(nights.filter((night) => night.date <= date).map(({ probability }) => probability))
          expect(hatchedBy(warm.nights)).toBeGreaterThanOrEqual(hatchedBy(cool.nights) - 1e-9)
        }
      }),
      { numRuns: 100 },
    )
  })

  it('leaves out the nights before the morning by which nothing had hatched, and keeps the odds of the rest', () => {
    fc.assert(
      fc.property(clutch, fc.integer({ min: 1, max: 12 }), (input, index) => {
        const before = hatchNights(input)
        const first = before.nights[Math.min(index, before.nights.length - 2)]!.date
        // Lights that go off after midnight are out in the morning of the night's own date.
        const isLate = input.lightsOff.time < '06:00'
        const morning = isLate ? Temporal.PlainDate.from(first).subtract({ days: 1 }).toString() : first
        const left = before.nights.filter(({ date }) => date >= first)
        const mass = sum(left.map(({ probability }) => probability))
        fc.pre(mass > 1e-6)
        const after = hatchNights({ ...input, notHatchedBy: morning })
        expect(after.nights[0]!.date).toBe(first)
        for (const { date, probability } of left) {
          const now = after.nights.find((night) => night.date === date)?.probability ?? 0
          expect(Math.abs(now - probability / mass)).toBeLessThan(1e-5)
        }
      }),
      { numRuns: 100 },
    )
  })

  it('does not depend on the order of temperature rows', () => {
    fc.assert(
      fc.property(
        clutch.chain((input) =>
          fc.tuple(
            fc.constant(input),
            fc.shuffledSubarray([...input.temperatures], { minLength: input.temperatures.length }),
          ),
        ),
        ([input, temperatures]) => {
          expect(hatchNights({ ...input, temperatures })).toEqual(hatchNights(input))
        },
      ),
      { numRuns: 100 },
    )
  })

  it('agrees with the closed form when a stage that says nothing is weighed in by quadrature', () => {
    fc.assert(
      fc.property(clutch, (input) => {
        const plain = hatchNights({ ...input, species: 'amphiprion-ocellaris' })
        // Seen at spawning, "orange" fits every duration alike.
        const seenStage = { stage: 'orange', at: input.spawnedAt }
        const weighed = hatchNights({ ...input, species: 'amphiprion-ocellaris', seenStage })
        for (const { date, probability } of plain.nights) {
          const other = weighed.nights.find((night) => night.date === date)?.probability ?? 0
          expect(Math.abs(other - probability)).toBeLessThan(1e-6)
        }
      }),
      { numRuns: 60 },
    )
  })
})
