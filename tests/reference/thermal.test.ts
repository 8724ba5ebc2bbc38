import { readFileSync } from 'node:fs'
import {
  copySpecies,
  developmentDays,
  findSpecies,
  type HatchForecast,
  hatchNights,
  incubationLevel,
  metamorphosisDays,
} from '@fryward/husbandry'
import { parse } from 'csv-parse/sync'
import { describe, expect, it } from 'vitest'

// Published durations from spawning to hatch. Figures with one end only, from memory, or of other damselfish are not
// in the file. Where a paper's temperature is not known to us, 27 C is taken and temperature_stated says "no".
interface Row {
  row: string
  species: string
  fromDays: number
  toDays: number
  temperatureC: number
  isTemperatureStated: boolean
}

type CsvRow = Record<'row' | 'species' | 'from_days' | 'to_days' | 'temperature_c' | 'temperature_stated', string>

const csv = readFileSync(new URL('./data/clownfish-incubation.csv', import.meta.url), 'utf8')
const csvRows: CsvRow[] = parse(csv, { columns: true })
const rows: Row[] = csvRows.map((cells) => ({
  row: cells.row,
  species: cells.species,
  fromDays: Number(cells.from_days),
  toDays: Number(cells.to_days),
  temperatureC: Number(cells.temperature_c),
  isTemperatureStated: cells.temperature_stated === 'yes',
}))
const stated = rows.filter((row) => row.isTemperatureStated)

const q10 = 2.5
const middle = (row: Row) => ({ durationDays: (row.fromDays + row.toDays) / 2, temperatureC: row.temperatureC })
const assumed = (value: number) => ({
  value,
  source: { kind: 'assumption' as const, citation: 'the other published rows' },
})

/** A clownfish whose level is known from these rows alone. */
function clownfishFrom(others: readonly Row[]) {
  const { medianDays } = incubationLevel({ durations: others.map(middle), referenceTemperatureC: 27, q10 })
  const incubation = { medianDays: assumed(medianDays), referenceTemperatureC: assumed(27), q10: assumed(q10) }
  return copySpecies('amphiprion-ocellaris', { id: 'clownfish-from-others', incubation })
}

const spawnDate = '2026-02-02'
const nightOf = (date: string) => Math.round((Date.parse(date) - Date.parse(spawnDate)) / 86_400_000)

/** Night of hatching by night number after spawning: spawned at 10:00, lights off at 19:00 (Dhaneesh et al. 2012). */
function forecastFor(row: Row, others: readonly Row[]): HatchForecast {
  return hatchNights({
    spawnedAt: `${spawnDate}T10:00:00Z`,
    temperatures: [{ at: `${spawnDate}T10:00:00Z`, temperatureC: row.temperatureC }],
    lightsOff: { time: '19:00', timeZone: 'UTC' },
    species: clownfishFrom(others),
  })
}

/** Mean log probability over every night that the printed duration allows. */
function logScore(forecast: HatchForecast, row: Row): number {
  const probability = new Map(forecast.nights.map((night) => [nightOf(night.date), night.probability]))
  const first = Math.round(row.fromDays)
  const nights = Array.from({ length: Math.round(row.toDays) - first + 1 }, (_, index) => first + index)
  return nights.reduce((sum, night) => sum + Math.log(probability.get(night)!), 0) / nights.length
}

const meanOf = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length
const uniformScore = Math.log(1 / 9)

const leaveOneOut = (from: readonly Row[]) =>
  from.map((row) => {
    const others = from.filter((other) => other.row !== row.row)
    const forecast = forecastFor(row, others)
    return { row, forecast, score: logScore(forecast, row) }
  })

describe('hatch nights, each published duration predicted from the others', () => {
  it('uses eleven durations with a stated temperature and five without', () => {
    expect(stated).toHaveLength(11)
    expect(rows).toHaveLength(16)
  })

  it('beats a uniform guess over nights 4 to 12 on the durations with a stated temperature', () => {
    const gain = meanOf(leaveOneOut(stated).map(({ score }) => score)) - uniformScore
    expect(gain).toBeGreaterThan(0.5)
  })

  it('beats it on all durations, with 27 C where the temperature is unknown', () => {
    const gain = meanOf(leaveOneOut(rows).map(({ score }) => score)) - uniformScore
    expect(gain).toBeGreaterThan(0.5)
  })

  it('beats it when every row of the same species is left out too', () => {
    const scores = stated.map((row) => {
      const others = stated.filter((other) => other.species !== row.species)
      return logScore(forecastFor(row, others), row)
    })
    expect(meanOf(scores) - uniformScore).toBeGreaterThan(0.5)
  })

  it('holds the middle of each printed range in its 80 % window for most rows, not for all', () => {
    const held = leaveOneOut(stated).filter(({ row, forecast }) => {
      const night = Math.round(middle(row).durationDays)
      return nightOf(forecast.window80.from) <= night && night <= nightOf(forecast.window80.to)
    })
    expect(held.length).toBeGreaterThanOrEqual(8)
  })

  it('scatters by no more than the 13 % that forecasts assume', () => {
    const { logSpread } = incubationLevel({ durations: stated.map(middle), referenceTemperatureC: 27, q10 })
    expect(logSpread).toBeGreaterThan(0.08)
    expect(logSpread).toBeLessThan(0.13)
  })
})

describe('species levels come from the published rows', () => {
  it.each([
    ['amphiprion-ocellaris', ['ocellaris-yasir-qin', 'ocellaris-cheng'], 0.01],
    ['amphiprion-percula', ['percula-dhaneesh'], 0.01],
    ['amphiprion-clarkii', ['clarkii-sarvi'], 0.01],
    ['amphiprion-frenatus', ['frenatus-lu'], 0.01],
    ['amphiprion-melanopus', ['melanopus-korea'], 0.01],
    ['premnas-biaculeatus', ['premnas-thesis'], 0.01],
  ] as const)('%s agrees with %j', (species, ids, toleranceDays) => {
    const own = rows.filter((row) => ids.some((id) => id === row.row)).map(middle)
    const referenceTemperatureC = findSpecies(species)!.incubation.referenceTemperatureC.value
    const { medianDays } = incubationLevel({ durations: own, referenceTemperatureC, q10 })
    const { days } = developmentDays({ species, temperatureC: referenceTemperatureC })
    expect(Math.abs(days - medianDays)).toBeLessThan(toleranceDays)
  })

  // Chen, Zeng & Cobcroft 2023 (96 h at 27 C); Shei 2008 (7-8 d at 26 C); Vagelli 1999 (19 d); Lin, Lin & Zhang 2008 (17.33 d).
  it.each([
    ['pseudochromis-fridmani', 27, 4],
    ['elacatinus-figaro', 26, 7.5],
    ['pterapogon-kauderni', 27, 19],
    ['hippocampus-erectus', 28, 17.33],
  ])('%s at %d C takes %d days', (species, temperatureC, days) => {
    expect(developmentDays({ species, temperatureC }).days).toBeCloseTo(days, 10)
  })
})

// Green & Fisher 2004, J. Exp. Mar. Biol. Ecol. 299:115-132: 12.3 +/- 0.3 d at 25 C, 9 +/- 0.6 d at 28 C.
describe('metamorphosis of A. melanopus', () => {
  it.each([
    [25, 12.3, 0.3],
    [28, 9, 0.6],
  ])('at %d C takes %d days within the printed error', (temperatureC, days, error) => {
    const got = metamorphosisDays({ species: 'amphiprion-melanopus', temperatureC })
    expect(Math.abs(got.days - days)).toBeLessThan(error)
    expect(got.isExtrapolated).toBe(false)
  })

  it('goes no faster past 31 C and says that it extrapolates', () => {
    const at31 = metamorphosisDays({ species: 'amphiprion-melanopus', temperatureC: 31 })
    const at33 = metamorphosisDays({ species: 'amphiprion-melanopus', temperatureC: 33 })
    expect(at33.days).toBe(at31.days)
    expect(at33.isExtrapolated).toBe(true)
  })
})
