import { describe, expect, it } from 'vitest'
import { dayMs } from '../calendar/elapsed.ts'
import { copySpecies } from '../species/index.ts'
import { type HatchForecast, type HatchNightsInput, hatchNights } from './hatch-nights.ts'

const base: HatchNightsInput = {
  spawnedAt: '2026-02-02T10:00:00Z',
  temperatures: [{ at: '2026-02-02T00:00:00Z', temperatureC: 27.35 }],
  lightsOff: { time: '19:00', timeZone: 'UTC' },
  species: 'amphiprion-ocellaris',
}

const on = (forecast: HatchForecast, date: string) =>
  forecast.nights.find((night) => night.date === date)?.probability ?? 0

const expectedDay = ({ nights }: HatchForecast) =>
  nights.reduce((sum, { date, probability }) => sum + probability * (Date.parse(date) / dayMs), 0)

describe('hatchNights', () => {
  it('expects an ocellaris clutch at 27.35 C in the night that lies nearest to 6.83 days', () => {
    const forecast = hatchNights(base)
    expect(forecast.likeliest.date).toBe('2026-02-08')
    expect(forecast.likeliest.windowStartsAt).toBe('2026-02-08T19:00:00Z')
    expect(forecast.likeliest.windowEndsAt).toBe('2026-02-08T22:00:00Z')
    expect(forecast.isExtrapolated).toBe(false)
    expect(forecast.isOverdue).toBe(false)
    expect(forecast.shareStillToCome).toBe(1)
  })

  it('gives the normal integral of log duration between the middles of neighbouring nights', () => {
    // Night 7 lies from day 6.9375 to 7.9375 (10:00 to 20:30, half a day either side): Phi((ln b - ln m) / s) of both.
    const [from, to] = [6.9375, 7.9375].map((days) => (Math.log(days) - Math.log(6.83)) / 0.13)
    const panels = 2000
    const step = (to! - from!) / panels
    let mass = 0
    for (let index = 0; index < panels; index++) mass += Math.exp(-0.5 * (from! + (index + 0.5) * step) ** 2) * step
    expect(on(hatchNights(base), '2026-02-09')).toBeCloseTo(mass / Math.sqrt(2 * Math.PI), 6)
  })

  it('dates a night by its lights-off, also where lights go off after midnight', () => {
    const lightsOff = { time: '00:30', timeZone: 'UTC' }
    const { nights } = hatchNights({ ...base, lightsOff })
    for (const { date, windowStartsAt } of nights) expect(windowStartsAt).toBe(`${date}T00:30:00Z`)
    const after = hatchNights({ ...base, lightsOff, notHatchedBy: '2026-02-09' })
    expect(after.nights[0]!.date).toBe('2026-02-10')
  })

  it('keeps lights-off at its local time when the clock changes', () => {
    const lightsOff = { time: '19:00', timeZone: 'America/New_York' }
    const { nights } = hatchNights({ ...base, spawnedAt: '2026-03-05T15:00:00Z', lightsOff })
    const startOf = (date: string) => nights.find((night) => night.date === date)?.windowStartsAt
    expect(startOf('2026-03-07')).toBe('2026-03-08T00:00:00Z')
    expect(startOf('2026-03-08')).toBe('2026-03-08T23:00:00Z')
    const { nights: autumn } = hatchNights({ ...base, spawnedAt: '2026-10-30T15:00:00Z', lightsOff })
    expect(autumn.find(({ date }) => date === '2026-10-31')?.windowStartsAt).toBe('2026-10-31T23:00:00Z')
    expect(autumn.find(({ date }) => date === '2026-11-01')?.windowStartsAt).toBe('2026-11-02T00:00:00Z')
  })

  it('lists one night for each date when lights-off falls in the hour that a clock change skips', () => {
    const lightsOff = { time: '02:30', timeZone: 'America/New_York' }
    const { nights } = hatchNights({ ...base, spawnedAt: '2026-03-05T15:00:00Z', lightsOff })
    expect(nights.slice(0, 5).map(({ date }) => date)).toEqual([
      '2026-03-06',
      '2026-03-07',
      '2026-03-08',
      '2026-03-09',
      '2026-03-10',
    ])
    expect(nights[2]!.windowStartsAt).toBe('2026-03-08T07:30:00Z')
  })

  it('drops only the elapsed part of tonight when nothing has hatched an hour into its window', () => {
    const lastNightOut = hatchNights({ ...base, notHatchedBy: '2026-02-09' })
    const anHourIn = hatchNights({ ...base, notHatchedBy: '2026-02-09T20:00:00Z' })
    const odds = (forecast: HatchForecast) => on(forecast, '2026-02-09') / on(forecast, '2026-02-10')
    expect(odds(anHourIn) / odds(lastNightOut)).toBeCloseTo(2 / 3, 10)
  })

  it('takes the set point a day after the last reading, and the first reading before it otherwise', () => {
    const cooling = hatchNights({ ...base, setPointC: 25 })
    const steady = hatchNights(base)
    expect(expectedDay(cooling) - expectedDay(steady)).toBeGreaterThan(0.8)
    const late = [{ at: '2026-02-04T00:00:00Z', temperatureC: 27.35 }]
    expect(hatchNights({ ...base, temperatures: late }).nights).toEqual(steady.nights)
    expect(hatchNights({ ...base, temperatures: [], setPointC: 27.35 }).nights).toEqual(steady.nights)
  })

  it('integrates a warm and a cool spell like their mean rate', () => {
    const temperatures = [
      { at: '2026-02-02T10:00:00Z', temperatureC: 29 },
      { at: '2026-02-05T10:00:00Z', temperatureC: 26 },
    ]
    const level = hatchNights({ ...base, temperatures }).nights
    const rate = (temperatureC: number) => 2.5 ** ((temperatureC - 27.35) / 10)
    // Three warm days are worth 3 * rate(29); the median clutch then needs the rest at rate(26).
    const median = 3 + (6.83 - 3 * rate(29)) / rate(26)
    const medianNight = level.reduce(
      ({ sum, date }, night) => (sum >= 0.5 ? { sum, date } : { sum: sum + night.probability, date: night.date }),
      { sum: 0, date: '' },
    ).date
    const nightNumber = Math.round(median - 0.4375)
    expect(medianNight).toBe(new Date(Date.parse('2026-02-02') + nightNumber * dayMs).toISOString().slice(0, 10))
  })

  it('flags water outside the tried temperatures and goes no faster past 31 C', () => {
    const at = (temperatureC: number) => hatchNights({ ...base, temperatures: [{ at: base.spawnedAt, temperatureC }] })
    expect(at(24).isExtrapolated).toBe(true)
    expect(at(24).hoursOutsideTried).toBeGreaterThan(24 * 7)
    expect(at(33).nights).toEqual(at(31).nights)
    expect(at(33).isExtrapolated).toBe(true)
  })

  it('moves towards a stage seen early or late, and never rules a night out by one look', () => {
    const plain = hatchNights(base)
    const ahead = hatchNights({ ...base, seenStage: { stage: 'silver', at: '2026-02-06T09:00:00Z' } })
    const behind = hatchNights({ ...base, seenStage: { stage: 'black', at: '2026-02-08T09:00:00Z' } })
    const noEyes = hatchNights({ ...base, seenStage: { stage: 'no-eyes', at: '2026-02-06T09:00:00Z' } })
    expect(expectedDay(ahead)).toBeLessThan(expectedDay(plain) - 0.3)
    expect(expectedDay(behind)).toBeGreaterThan(expectedDay(plain) + 0.3)
    expect(expectedDay(noEyes)).toBeGreaterThan(expectedDay(plain) + 0.3)
    expect(on(ahead, '2026-02-10')).toBeGreaterThan(0)
  })

  it('lists what it rests on, and the error of judging a stage only when one was seen', () => {
    const names = (forecast: HatchForecast) => forecast.basis.map(({ name }) => name)
    const seen = hatchNights({ ...base, seenStage: { stage: 'black', at: '2026-02-06T09:00:00Z' } })
    expect(names(hatchNights(base))).toContain('share on a second night')
    expect(names(hatchNights(base))).not.toContain('error of judging a stage')
    expect(names(seen)).toContain('error of judging a stage')
    expect(names(hatchNights({ ...base, secondNightShare: 0.3 }))).not.toContain('share on a second night')
  })

  it('takes a stage seen as proof that nothing had hatched by then', () => {
    const seen = hatchNights({ ...base, seenStage: { stage: 'silver', at: '2026-02-09T08:00:00Z' } })
    expect(seen.nights[0]!.date).toBe('2026-02-09')
  })

  it('leaves the stated share of the main hatch to the next evening', () => {
    const { nights } = hatchNights({ ...base, secondNightShare: 0.25 })
    const index = nights.findIndex(({ date }) => date === '2026-02-09')
    const expected = 0.75 * nights[index]!.probability + 0.25 * nights[index - 1]!.probability
    expect(nights[index]!.shareHatching).toBeCloseTo(expected, 12)
    expect(hatchNights(base).secondNightShare).toBe(0.15)
  })

  it("follows a pair's own clutches, brought to the same temperature", () => {
    const slow = { durationDays: 8.4, temperatureC: 27.35 }
    const once = hatchNights({ ...base, pairHistory: [slow] })
    const thrice = hatchNights({ ...base, pairHistory: [slow, slow, slow] })
    expect(once.level.medianDays).toBeGreaterThan(hatchNights(base).level.medianDays)
    expect(thrice.level.medianDays).toBeGreaterThan(once.level.medianDays)
    expect(thrice.level.logSd).toBeLessThan(once.level.logSd)
    expect(thrice.level.learnedFrom).toBe(3)
    const cool = { durationDays: 8.4, temperatureC: 25 }
    expect(hatchNights({ ...base, pairHistory: [cool] }).level.medianDays).toBeLessThan(once.level.medianDays)
  })

  it('says that a clutch is overdue once hardly any was expected to last so long', () => {
    const overdue = hatchNights({ ...base, notHatchedBy: '2026-02-14' })
    expect(overdue.isOverdue).toBe(true)
    expect(overdue.shareStillToCome).toBeLessThan(0.025)
  })

  it('takes a profile that a room has changed', () => {
    const medianDays = { value: 9, source: { kind: 'assumption' as const, citation: "this room's own clutches" } }
    const ours = copySpecies('amphiprion-ocellaris', { id: 'our-ocellaris', incubation: { medianDays } })
    const forecast = hatchNights({ ...base, species: ours })
    expect(forecast.level.medianDays).toBeCloseTo(9, 10)
    expect(forecast.basis[0]).toEqual({ name: 'median duration', unit: 'days', ...medianDays })
  })
})

describe('hatchNights refuses', () => {
  const reading = { at: base.spawnedAt, temperatureC: 27 }
  it.each<[string, Partial<HatchNightsInput>, string]>([
    ['an unknown species', { species: 'nemo' }, 'species: "nemo" is not a known id'],
    ['a brooder', { species: 'pterapogon-kauderni' }, 'use brooderRelease'],
    ['an instant without a time', { spawnedAt: '2026-02-02' }, 'spawnedAt: "2026-02-02" is not an ISO 8601 instant'],
    ['no temperature at all', { temperatures: [] }, 'temperatures: [] is empty'],
    [
      'a reading that is no number',
      { temperatures: [reading, { ...reading, temperatureC: Number.NaN }] },
      'temperatures[1].temperatureC: NaN is not a number from 10 to 40',
    ],
    [
      'a reading of boiling water',
      { temperatures: [{ ...reading, temperatureC: 85 }] },
      'temperatures[0].temperatureC: 85 is not a number from 10 to 40',
    ],
    ['a set point of ice', { setPointC: -1 }, 'setPointC: -1 is not a number from 10 to 40'],
    [
      'an impossible lights-off',
      { lightsOff: { time: '25:00', timeZone: 'UTC' } },
      'lightsOff.time: "25:00" is not a time of day',
    ],
    [
      'an unknown time zone',
      { lightsOff: { time: '19:00', timeZone: 'Mars/Base' } },
      'lightsOff.timeZone: "Mars/Base" is not a time zone',
    ],
    [
      'a negative past duration',
      { pairHistory: [{ durationDays: -7 }] },
      'pairHistory[0].durationDays: -7 is not a number from 0.5 to 400',
    ],
    ['a share above a half', { secondNightShare: 0.9 }, 'secondNightShare: 0.9 is not a number from 0 to 0.5'],
    [
      'an unknown stage',
      { seenStage: { stage: 'blue', at: base.spawnedAt } },
      'it has orange, black, silver, no-eyes, eyes',
    ],
    [
      'a look before the spawning',
      { seenStage: { stage: 'orange', at: '2026-02-01T10:00:00Z' } },
      'is before spawnedAt',
    ],
    ['a date that is none', { notHatchedBy: '2026-02-31' }, 'notHatchedBy: "2026-02-31" is not a date'],
    ['a clutch ten years old', { notHatchedBy: '2036-02-02' }, 'notHatchedBy: 2036-02-02 is too late to be true'],
  ])('%s', (_, change, message) => {
    expect(() => hatchNights({ ...base, ...change })).toThrow(RangeError)
    expect(() => hatchNights({ ...base, ...change })).toThrow(message)
  })
})
