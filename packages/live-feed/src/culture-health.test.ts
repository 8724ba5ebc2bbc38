import { describe, expect, it } from 'vitest'
import { CHILLED_STORE, chilledReserve } from './chilled-reserve.ts'
import { crashHazard } from './crash-hazard.ts'
import { cultureHealth, isShortOfEggs } from './culture-health.ts'
import { inoculum } from './inoculum.ts'

describe('cultureHealth', () => {
  it('says unknown when nothing was looked at, and sound when all looked well', () => {
    expect(cultureHealth({}).grade).toBe('unknown')
    expect(cultureHealth({ isCrowded: true }).grade).toBe('unknown')
    expect(cultureHealth({ signs: [] }).grade).toBe('sound')
    expect(cultureHealth({ eggRatio: 0.7, trend: 'rising', nh3MgL: 0.1, oxygenMgL: 6, pH: 8, signs: [] }).grade).toBe(
      'sound',
    )
  })

  it('lets a same-day sign lead, before the eggs show it', () => {
    const health = cultureHealth({ eggRatio: 0.8, signs: ['swimming-slow'] })
    expect(health.grade).toBe('act')
    expect(health.reasons[0]?.code).toBe('swimming-slow')
    expect(health.phase).toBe('growing')
  })

  it.each([
    [{ eggRatio: 0.1 }, 'egg-ratio-declining', 'act'],
    [{ eggRatio: 0, females: 10 }, 'egg-ratio-unsure', 'watch'],
    // A culture that holds its own shows 7.8 eggs on 60 females: three or fewer in one sample of twenty (Poisson 0.048).
    [{ eggRatio: 3 / 60, females: 60 }, 'egg-ratio-declining', 'act'],
    [{ eggRatio: 4 / 60, females: 60 }, 'egg-ratio-unsure', 'watch'],
    [{ eggRatio: 0, females: 50 }, 'egg-ratio-declining', 'act'],
    [{ eggRatio: 3 / 60, females: 60, isCrowded: true }, 'egg-ratio-crowded', 'act'],
    [{ eggRatio: 0.1, isCrowded: false }, 'egg-ratio-declining', 'act'],
    [{ eggRatio: 0.3 }, 'egg-ratio-stationary', 'watch'],
    [{ nh3MgL: 1 }, 'ammonia-high', 'act'],
    [{ nh3MgL: 0.8 }, 'ammonia-rising', 'watch'],
    [{ oxygenMgL: 1.9 }, 'oxygen-low', 'act'],
    [{ oxygenMgL: 2.5 }, 'oxygen-low', 'watch'],
    [{ pH: 6.5 }, 'ph-low', 'act'],
    [{ pH: 7.2 }, 'ph-below-best', 'watch'],
    [{ trend: 'falling' as const }, 'falling', 'act'],
  ])('grades %j as %s: %s', (input, code, grade) => {
    const health = cultureHealth(input)
    expect(health.grade).toBe(grade)
    expect(health.reasons.map((reason) => reason.code)).toEqual([code])
    expect(health.reasons[0]?.grade).toBe(grade)
    expect(health.reasons[0]?.source).not.toBe('')
  })

  // 1 mg/L of NH3, 2 of oxygen, pH 6.6 to live and 7.5 to do well: FAO Fish. Tech. Pap. 361, sect. 3.5; from memory. From
  // 0.7 mg/L of NH3 on there are fewer young: Araujo, Hagiwara & Snell 2001, Hydrobiologia 446/447:363-368.
  it.each([
    [{ nh3MgL: 0.69 }, null],
    [{ nh3MgL: 0.7 }, 'watch'],
    [{ nh3MgL: 0.99 }, 'watch'],
    [{ oxygenMgL: 2 }, 'act'],
    [{ oxygenMgL: 2.1 }, 'watch'],
    [{ oxygenMgL: 2.9 }, 'watch'],
    // Half as much again as the least: common practice.
    [{ oxygenMgL: 3 }, null],
    [{ pH: 6.6 }, 'act'],
    [{ pH: 6.7 }, 'watch'],
    [{ pH: 7.4 }, 'watch'],
    [{ pH: 7.5 }, null],
  ])('water of %j is %s', (water, grade) => {
    expect(cultureHealth(water).reasons.map((reason) => reason.grade)).toEqual(grade === null ? [] : [grade])
  })

  it.each([
    [{ nh3MgL: -1 }, /^nh3MgL is -1.* mg\/L/],
    [{ nh3MgL: 101 }, 'nh3MgL is 101'],
    [{ oxygenMgL: -1 }, /^oxygenMgL is -1.* mg\/L/],
    [{ oxygenMgL: 51 }, 'oxygenMgL is 51'],
  ])('refuses %j, and says of what', (water, sentence) => {
    expect(() => cultureHealth(water)).toThrow(sentence)
  })

  it('takes what a kit can show of water that kills', () => {
    expect(cultureHealth({ nh3MgL: 100, oxygenMgL: 0, pH: 0 }).grade).toBe('act')
    expect(cultureHealth({ oxygenMgL: 50 }).grade).toBe('sound')
  })

  it('refuses figures that cannot be', () => {
    expect(() => cultureHealth({ pH: 15 })).toThrow('pH is 15')
    expect(() => cultureHealth({ eggRatio: Number.NaN })).toThrow('eggRatio is NaN')
    expect(() => cultureHealth({ eggRatio: 0, females: -1 })).toThrow('females is -1')
  })
})

describe('inoculum', () => {
  it('grades a start by density and asks for acclimation past 5 of salinity', () => {
    // 50-150 per mL: ICAR e-course on rotifers (text of FAO Fish. Tech. Pap. 361).
    const verdictOf = (perMl: number) => inoculum({ animals: perMl * 10_000, volumeL: 10 }).verdict
    expect([49, 50, 150, 151].map(verdictOf)).toEqual([
      'too-thin',
      'within-range',
      'within-range',
      'denser-than-needed',
    ])
    expect(inoculum({ animals: 200_000, volumeL: 10 }).verdict).toBe('too-thin')
    expect(inoculum({ animals: 2_000_000, volumeL: 10 }).verdict).toBe('denser-than-needed')
    const start = inoculum({ animals: 1_000_000, volumeL: 10, fromSalinity: 20, toSalinity: 26 })
    expect(start).toMatchObject({ verdict: 'within-range', needsAcclimation: true, animalsLower: 500_000 })
    expect(inoculum({ animals: 1, volumeL: 1, fromSalinity: 20, toSalinity: 25 }).needsAcclimation).toBe(false)
    expect(() => inoculum({ animals: 1, volumeL: 0 })).toThrow('volumeL')
  })
})

describe('chilledReserve and crashHazard', () => {
  it('loses the reserve day by day and flags what lies past the published point', () => {
    expect(chilledReserve({ ageDays: 0 }).shareAlive).toBe(1)
    expect(chilledReserve({ ageDays: 28 })).toMatchObject({ shareAlive: 0.25, isExtrapolated: true })
    // The source gives the one point, half after 14 days: Assavaaree et al. 2001, Aquac. Res. 32:29-39.
    expect(chilledReserve({ ageDays: 14 })).toMatchObject({ shareAlive: 0.5, isExtrapolated: false })
    expect(chilledReserve({ ageDays: 60 }).isExtrapolated).toBe(true)
    expect(() => chilledReserve({ ageDays: 61 })).toThrow(/^ageDays is 61.* days/)
    expect(() => chilledReserve({ ageDays: -1 })).toThrow('ageDays')
  })

  it('moves the hazard from the prior to the room’s record', () => {
    expect(crashHazard({ crashes: 0, cultureDays: 0 })).toBeCloseTo(0.01, 12)
    expect(crashHazard({ crashes: 0, cultureDays: 900 })).toBeCloseTo(0.001, 12)
    expect(crashHazard({ crashes: 20, cultureDays: 10_000 })).toBeCloseTo(0.002, 3)
    expect(() => crashHazard({ crashes: 1, cultureDays: 0 })).toThrow('cultureDays')
  })
})

describe('what a look at a culture says', () => {
  const [snell, fao] = ['Snell, Childress, Boyer & Hoff 1987', 'FAO Fish. Tech. Pap. 361, sect. 3.5']

  // Slow swimming shows within ten minutes of trouble (Snell et al. 1987); the others are common practice.
  it.each([
    ['swimming-slow', 'act', snell],
    ['sinking', 'act', 'common practice'],
    ['smell', 'act', 'common practice'],
    ['foam', 'watch', 'common practice'],
    ['ciliates', 'watch', 'common practice'],
    ['clear-water', 'watch', 'common practice'],
  ] as const)('%s asks to %s, and by whom that is said', (sign, grade, source) => {
    const health = cultureHealth({ signs: [sign, sign] })
    expect(health).toEqual({ grade, phase: null, reasons: [expect.objectContaining({ code: sign, grade })] })
    expect(health.reasons[0]!.source).toContain(source)
  })

  it.each([
    [{ eggRatio: 0.1 }, snell],
    [{ eggRatio: 0.1, females: 10 }, 'common practice'],
    [{ eggRatio: 0.1, isCrowded: true }, 'common practice'],
    [{ eggRatio: 0.3 }, snell],
    [{ trend: 'falling' as const }, 'common practice'],
    [{ nh3MgL: 1 }, fao],
    [{ nh3MgL: 0.7 }, 'Araujo, Hagiwara & Snell 2001'],
    [{ oxygenMgL: 2 }, fao],
    [{ oxygenMgL: 2.5 }, 'common practice'],
    [{ pH: 6.6 }, fao],
    [{ pH: 7.4 }, fao],
  ])('%j says so by %s', (look, source) => {
    expect(cultureHealth(look).reasons[0]!.source).toContain(source)
  })

  it('puts signs before eggs, eggs before the trend, and the water last', () => {
    const all = { signs: ['foam'] as const, eggRatio: 0.3, trend: 'falling' as const, nh3MgL: 2, oxygenMgL: 1, pH: 6 }
    expect(cultureHealth(all).reasons.map(({ code }) => code)).toEqual([
      ...['foam', 'egg-ratio-stationary', 'falling', 'ammonia-high', 'oxygen-low', 'ph-low'],
    ])
  })

  it.each([
    { eggRatio: 0.5 },
    { trend: 'rising' as const },
    { trend: 'steady' as const },
    { nh3MgL: 0 },
    { oxygenMgL: 3 },
    { pH: 14 },
    { eggRatio: 20 },
  ])('%j alone is a look, and all is well', (look) => {
    expect(cultureHealth(look)).toMatchObject({ grade: 'sound', reasons: [] })
  })

  it.each([
    ['eggRatio is 20.1; allowed: a number from 0 to 20 eggs per female', { eggRatio: 20.1 }],
    ['eggRatio is -1', { eggRatio: -1 }],
    ['females is -1; allowed: a finite number from 0 animals', { eggRatio: 0, females: -1 }],
    ['pH is -1; allowed: a number from 0 to 14', { pH: -1 }],
  ])('is refused where %s', (sentence, look) => {
    expect(() => cultureHealth(look)).toThrow(sentence)
  })

  it('alarms of few eggs on fifty females, and not on fewer: at 0.13 a female ten show none one time in four', () => {
    expect(Math.exp(-0.13 * 10)).toBeGreaterThan(1 / 4)
    const short = (eggRatio: number, females?: number) => isShortOfEggs({ eggRatio, females })
    expect([short(0, 49), short(0, 50), short(0.129), short(0.13), short(0, 0)]).toEqual([
      ...[false, true, true, false, false],
    ])
    // 20 of 200 may be 29.06 by chance alone (Garwood's one-sided 5 %), 26 would be 0.13 a female; 15 may be 23.10.
    expect([short(20 / 200, 200), short(15 / 200, 200)]).toEqual([false, true])
  })
})

describe('what a start and a reserve are told', () => {
  it('gives animals for both ends of the published range in this volume', () => {
    expect(inoculum({ animals: 0, volumeL: 2 })).toEqual({
      ...{ densityPerMl: 0, verdict: 'too-thin', animalsLower: 100_000, animalsUpper: 300_000, needsAcclimation: null },
    })
  })

  it('asks for acclimation whichever way the salinity changes, and only where both are known', () => {
    const needs = (salinities: { fromSalinity?: number; toSalinity?: number }) =>
      inoculum({ animals: 1, volumeL: 1, ...salinities }).needsAcclimation
    // More than 5 at once inhibits or kills: Treece & Davis 2000, SRAC Publication 701.
    expect(needs({ fromSalinity: 25.1, toSalinity: 20 })).toBe(true)
    expect(needs({ fromSalinity: 20, toSalinity: 25.1 })).toBe(true)
    expect(needs({ fromSalinity: 25, toSalinity: 20 })).toBe(false)
    expect(needs({ fromSalinity: 0, toSalinity: 97 })).toBe(true)
    expect([needs({ fromSalinity: 1 }), needs({ toSalinity: 90 })]).toEqual([null, null])
  })

  it.each([
    ['animals is -1; allowed: a finite number from 0 animals', { animals: -1 }],
    ['volumeL is 0; allowed: a finite number above 0 L', { volumeL: 0 }],
    ['fromSalinity is -1; allowed: a number from 0 to 97', { fromSalinity: -1 }],
    ['fromSalinity is 97.1', { fromSalinity: 97.1 }],
    ['toSalinity is -1; allowed: a number from 0 to 97', { toSalinity: -1 }],
    ['toSalinity is 97.1', { toSalinity: 97.1 }],
  ])('is refused where %s', (sentence, change) => {
    expect(() => inoculum({ animals: 1, volumeL: 1, ...change })).toThrow(sentence)
  })

  it('holds 20,000 per mL at 4 C, which grow again after 4 days (Assavaaree et al. 2001, Aquac. Res. 32:29-39)', () => {
    expect(CHILLED_STORE).toEqual({ temperatureC: 4, densityPerMl: 20_000, recoveryDays: 4 })
    expect(chilledReserve({ ageDays: 7 })).toEqual({
      ...{ shareAlive: expect.closeTo(Math.SQRT1_2, 12), isExtrapolated: false, recoveryDays: 4 },
    })
  })

  it.each([
    ['crashes is 0.5; allowed: a whole number from 0', { crashes: 0.5, cultureDays: 9 }],
    ['cultureDays is -1; allowed: a finite number from 0 days', { crashes: 0, cultureDays: -1 }],
    ['cultureDays is 0; allowed: above 0 when a crash was seen', { crashes: 1, cultureDays: 0 }],
  ])('knows no crashes where %s', (sentence, record) => {
    expect(() => crashHazard(record)).toThrow(sentence)
  })

  it('counts the room’s crashes to one in a hundred days', () => {
    expect(crashHazard({ crashes: 2, cultureDays: 50 })).toBeCloseTo(3 / 150, 12)
  })
})
