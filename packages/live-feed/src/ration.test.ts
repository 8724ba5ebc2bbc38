import { describe, expect, it } from 'vitest'
import { concentrateRation, densityFedByConcentrate, rationAdjustment } from './ration.ts'

const culture = { rotifersPerMl: 1000, volumeL: 10, concentrateCellsPerMl: 1e9 }

describe('concentrateRation', () => {
  it('multiplies animals by cells each and divides by the strength on the label', () => {
    // 1e7 rotifers at 100,000 cells each are 1e12 cells.
    const ration = concentrateRation({ ...culture, cellsPerRotiferPerDay: 100_000, feedsPerDay: 4 })
    expect(ration.cellsPerDay).toBe(1e12)
    expect(ration.mlPerDay).toBe(1000)
    expect(ration.mlPerFeed).toBe(250)
    expect(ration.isOutsideTrials).toBe(false)
  })

  it('is dealt out in two feeds a day where nobody says otherwise', () => {
    const { mlPerDay, mlPerFeed } = concentrateRation(culture)
    expect(mlPerFeed).toBe(mlPerDay / 2)
    expect(concentrateRation({ ...culture, feedsPerDay: 1 }).mlPerFeed).toBe(mlPerDay)
  })

  it('follows the adjustment, and says when it leaves the published trials', () => {
    const most = concentrateRation({ ...culture, cellsPerRotiferPerDay: 120_000, adjustment: 1.5 })
    expect(most.cellsPerDay).toBeCloseTo(1.8e12, 0)
    expect(most.isOutsideTrials).toBe(true)
  })

  it('gives nothing to an empty culture', () => {
    expect(concentrateRation({ ...culture, rotifersPerMl: 0 }).mlPerDay).toBe(0)
  })

  it.each([
    ['rotifersPerMl', { rotifersPerMl: Number.NaN }],
    ['volumeL', { volumeL: 0 }],
    ['concentrateCellsPerMl', { concentrateCellsPerMl: -1 }],
    ['cellsPerRotiferPerDay', { cellsPerRotiferPerDay: Number.POSITIVE_INFINITY }],
    ['feedsPerDay', { feedsPerDay: 1.5 }],
    ['adjustment', { adjustment: 2 }],
  ])('refuses a bad %s', (argument, change) => {
    expect(() => concentrateRation({ ...culture, ...change })).toThrow(argument)
  })

  it.each([
    ['rotifersPerMl', { rotifersPerMl: -1 }, 'per mL'],
    ['volumeL', { volumeL: 0 }, 'L'],
    ['cellsPerRotiferPerDay', { cellsPerRotiferPerDay: 0 }, 'cells'],
    ['concentrateCellsPerMl', { concentrateCellsPerMl: 0 }, 'cells per mL'],
  ])('says in what %s is counted when it refuses it', (argument, change, unit) => {
    expect(() => concentrateRation({ ...culture, ...change })).toThrow(new RegExp(`${argument}.* ${unit}`))
  })

  it.each([0, 49])('refuses %d feeds a day', (feedsPerDay) => {
    expect(() => concentrateRation({ ...culture, feedsPerDay })).toThrow('feedsPerDay')
  })

  // Trials of 25,000-150,000 cells: Pfeiffer & Ludwig 2007, N. Am. J. Aquac. 69:239-243.
  it.each([
    [24_999, true],
    [25_000, false],
    [150_000, false],
    [150_001, true],
  ])('%d cells a rotifer a day are outside the trials: %s', (cellsPerRotiferPerDay, isOutsideTrials) => {
    expect(concentrateRation({ ...culture, cellsPerRotiferPerDay })).toMatchObject({ isOutsideTrials })
  })

  it.each([
    ['mlPerDay', { mlPerDay: -1 }, 'mL'],
    ['volumeL', { volumeL: 0 }, 'L'],
    ['cellsPerRotiferPerDay', { cellsPerRotiferPerDay: 0 }, 'cells'],
    ['concentrateCellsPerMl', { concentrateCellsPerMl: 0 }, 'cells per mL'],
  ])('the inverse refuses a bad %s, and says in what it is counted', (argument, change, unit) => {
    const given = { mlPerDay: 5, volumeL: 18, concentrateCellsPerMl: 1e9, ...change }
    expect(() => densityFedByConcentrate(given)).toThrow(new RegExp(`${argument}.* ${unit}`))
  })
})

describe('rationAdjustment', () => {
  it('gives less while the water is still green', () => {
    expect(rationAdjustment({ waterAtNextFeed: 'green', isCultureSound: true }).factor).toBeCloseTo(0.8, 12)
  })

  it('gives more when it is clear, but only to a sound culture', () => {
    expect(rationAdjustment({ waterAtNextFeed: 'clear', isCultureSound: true }).factor).toBeCloseTo(1.2, 12)
    const unsound = rationAdjustment({ waterAtNextFeed: 'clear', isCultureSound: false })
    expect(unsound.factor).toBe(1)
    expect(unsound.reason).toBe('clear-but-unsound')
  })

  it('keeps what was right, and gives its reason for every step', () => {
    const tinted = rationAdjustment({ waterAtNextFeed: 'tinted', isCultureSound: true, previous: 1.2 })
    expect(tinted).toMatchObject({ factor: 1.2, reason: 'tinted', isAtLimit: false })
    const reasonFor = (waterAtNextFeed: 'green' | 'clear') =>
      rationAdjustment({ waterAtNextFeed, isCultureSound: true }).reason
    expect([reasonFor('green'), reasonFor('clear')]).toEqual(['still-green', 'clear-and-sound'])
  })

  it('stops at its limits and says so', () => {
    const least = rationAdjustment({ waterAtNextFeed: 'green', isCultureSound: true, previous: 0.55 })
    expect(least).toMatchObject({ factor: 0.5, isAtLimit: true, source: 'common practice' })
    const most = rationAdjustment({ waterAtNextFeed: 'clear', isCultureSound: true, previous: 1.4 })
    expect(most).toMatchObject({ factor: 1.5, isAtLimit: true })
  })

  it('refuses a previous factor that it could not have given', () => {
    expect(() => rationAdjustment({ waterAtNextFeed: 'green', isCultureSound: true, previous: 2 })).toThrow(
      'previous is 2',
    )
  })
})
