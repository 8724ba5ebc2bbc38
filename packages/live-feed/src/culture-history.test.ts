import { describe, expect, it } from 'vitest'
import { type CultureHistory, toConditions, toEvents, toLogObservations } from './culture-history.ts'

const counted = { day: 1, densityPerMl: 100, animalsCounted: 50 }

describe('what happened to a culture', () => {
  it('stands in order of time, and on one day animals go in before they come out', () => {
    const events = toEvents({
      removals: [
        { day: 4, fraction: 0.2 },
        { day: 1, fraction: 0.5 },
      ],
      additions: [
        { day: 4, addedPerMl: 30 },
        { day: 2, addedPerMl: 20 },
      ],
    })
    expect(events).toEqual([
      { day: 1, keepShare: 0.5, addedPerMl: 0 },
      { day: 2, keepShare: 1, addedPerMl: 20 },
      { day: 4, keepShare: 1, addedPerMl: 30 },
      { day: 4, keepShare: 0.8, addedPerMl: 0 },
    ])
  })

  it.each([
    ['additions[0].day is NaN', { additions: [{ day: Number.NaN, addedPerMl: 1 }] }],
    [
      'additions[0].addedPerMl is -1; allowed: a finite number from 0 per mL',
      { additions: [{ day: 1, addedPerMl: -1 }] },
    ],
    ['removals[0].day is NaN', { removals: [{ day: Number.NaN, fraction: 0.1 }] }],
    ['removals[0].fraction is 1; allowed: a share from 0 to below 1', { removals: [{ day: 1, fraction: 1 }] }],
  ])('is refused where %s', (sentence, events) => {
    expect(() => toEvents(events)).toThrow(sentence)
  })

  it('may be that nothing was added', () => {
    expect(toEvents({ additions: [{ day: 1, addedPerMl: 0 }] })).toHaveLength(1)
  })
})

describe('what was counted', () => {
  it('is a logarithm, with the error of so many animals (variance 1 / n of a Poisson count, delta method)', () => {
    const [seen] = toLogObservations({ observations: [{ ...counted, eggRatio: 0.5 }] })
    expect(seen).toEqual({
      ...{ day: 1, densityPerMl: 100, logDensity: Math.log(100), countVariance: 1 / 50 },
      logEggs: Math.log(1.5),
    })
    expect(toLogObservations({ observations: [{ day: 1, densityPerMl: 100 }] })[0]!.countVariance).toBe(0)
  })

  it('has a logarithm even where nothing was seen, in great doubt, and no eggs', () => {
    const [none] = toLogObservations({
      observations: [{ ...counted, densityPerMl: 0, animalsCounted: 0, eggRatio: 0 }],
    })
    expect(Number.isFinite(none!.logDensity)).toBe(true)
    expect(none!.logDensity).toBeLessThan(0)
    expect(none!.countVariance).toBeGreaterThan(1)
    expect(none!.logEggs).toBeNull()
  })

  it.each<[string, CultureHistory['observations']]>([
    ['observations.length is 0', []],
    ['observations[0].day is NaN', [{ ...counted, day: Number.NaN }]],
    ['observations[0].densityPerMl is -1; allowed: a finite number from 0 per mL', [{ ...counted, densityPerMl: -1 }]],
    [
      'observations[0].animalsCounted is -1; allowed: a finite number from 0 animals',
      [{ ...counted, animalsCounted: -1 }],
    ],
    ['observations[0].eggRatio is -1; allowed: a finite number from 0 eggs per female', [{ ...counted, eggRatio: -1 }]],
    ['observations[1].day is 1; allowed: later than the observation before it (1)', [counted, counted]],
    ['observations[1].day is 900; allowed: later than', [counted, { ...counted, day: 900 }]],
  ])('is refused where %s', (sentence, observations) => {
    expect(() => toLogObservations({ observations })).toThrow(sentence)
  })

  it.each([
    ['dilutionPerDay is -1; allowed: a number from 0 to 20 vessel volumes a day', { dilutionPerDay: -1 }],
    ['dilutionPerDay is 21', { dilutionPerDay: 21 }],
    ['temperatureC is 36; allowed: a number from 5 to 35 C', { temperatureC: 36 }],
    ['temperatureC is 4', { temperatureC: 4 }],
    ['salinity is 98; allowed: a number from 0 to 97', { salinity: 98 }],
    ['capacityPerMl is 0; allowed: a finite number above 0 per mL', { capacityPerMl: 0 }],
  ])('is refused where %s', (sentence, conditions) => {
    expect(() => toConditions({ observations: [counted], ...conditions })).toThrow(sentence)
  })

  it('may lie a year back, and no longer', () => {
    const after = (day: number) =>
      toLogObservations({
        observations: [
          { ...counted, day: 0 },
          { ...counted, day },
        ],
      })
    expect(after(366)).toHaveLength(2)
    expect(() => after(366.1)).toThrow(
      'observations[1].day is 366.1; allowed: later than the observation before it (0) by at most 366',
    )
  })

  it('as nothing is half an animal in one mL, which is as unsure as that: 1 / n of a half', () => {
    const [none] = toLogObservations({ observations: [{ day: 0, densityPerMl: 0, animalsCounted: 40 }] })
    expect(none).toMatchObject({ densityPerMl: 0, logDensity: Math.log(0.5), countVariance: 2 })
  })

  it('with a density that nobody counted has no error of counting', () => {
    const [said] = toLogObservations({ observations: [{ day: 0, densityPerMl: 80, animalsCounted: 0, eggRatio: 0 }] })
    expect(said).toMatchObject({ countVariance: 0, logEggs: 0 })
  })

  it('takes both ends of each condition', () => {
    const under = { observations: [], dilutionPerDay: 0, temperatureC: 5, salinity: 0, capacityPerMl: 1 }
    expect(toConditions(under)).toEqual({ dilutionPerDay: 0 })
    expect(toConditions({ ...under, dilutionPerDay: 20, temperatureC: 35, salinity: 97 })).toEqual({
      dilutionPerDay: 20,
    })
    expect(toConditions({ observations: [] })).toEqual({ dilutionPerDay: 0 })
    expect(toEvents({})).toEqual([])
  })
})
