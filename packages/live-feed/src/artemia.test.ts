import { describe, expect, it } from 'vitest'
import { decapsulation, hatchingTest } from './artemia-lot.ts'
import { artemiaHatchHours, artemiaHatchPlan, COLD_STORE } from './artemia-plan.ts'

describe('artemiaHatchHours', () => {
  it.each([
    [28, 24, false],
    [24, 30, false],
    [20, 36, false],
    [30, 24, false],
    [16, 42, true],
    [32, 24, true],
  ])('at %d C it is %d h, extrapolated: %s', (temperatureC, hours, isExtrapolated) => {
    expect(artemiaHatchHours({ temperatureC })).toEqual({ hours, isExtrapolated })
  })

  it('refuses water in which nothing hatches', () => {
    expect(() => artemiaHatchHours({ temperatureC: 34 })).toThrow(
      'temperatureC is 34; allowed: a number from 15 to 33 C',
    )
  })
})

describe('artemiaHatchPlan', () => {
  const wanted = { neededAt: '2026-03-05T08:00:00+01:00', nauplii: 500_000, temperatureC: 28 }

  it('hatches unenriched nauplii just in time', () => {
    const plan = artemiaHatchPlan(wanted)
    expect(plan.neededAt).toBe('2026-03-05T07:00:00.000Z')
    expect(plan.harvestAt).toBe(plan.neededAt)
    expect(plan.startAt).toBe('2026-03-04T07:00:00.000Z')
    expect(plan.enrichAt).toBeNull()
    expect(plan.cystsG).toBe(2.5)
    expect(plan.vesselL).toBe(0.5)
  })

  it('takes an instant as text, as milliseconds or as a Date', () => {
    const epochMs = Date.parse(wanted.neededAt)
    expect(artemiaHatchPlan({ ...wanted, neededAt: epochMs })).toEqual(artemiaHatchPlan(wanted))
    expect(artemiaHatchPlan({ ...wanted, neededAt: new Date(epochMs) })).toEqual(artemiaHatchPlan(wanted))
    // ISO 8601 writes a zone with a colon or, in its basic form, without one.
    expect(artemiaHatchPlan({ ...wanted, neededAt: '2026-03-05T08:00:00+0100' })).toEqual(artemiaHatchPlan(wanted))
  })

  it('enriches 100 to a mL, with 0.3 g of emulsion to a litre every 12 hours', () => {
    // FAO Fish. Tech. Pap. 361, sect. 4.3.4; from memory.
    const enriched = (enrichHours: number) => {
      const { enrichmentVesselL, emulsionG } = artemiaHatchPlan({ ...wanted, enrichHours })
      return [enrichmentVesselL, emulsionG === null ? null : Number(emulsionG.toFixed(9))]
    }
    expect([0, 12, 13, 24].map(enriched)).toEqual([
      [null, null],
      [5, 1.5],
      [5, 3],
      [5, 3],
    ])
  })

  it('loads large vessels less, and splits what one cannot hold', () => {
    expect(artemiaHatchPlan({ ...wanted, nauplii: 200_000 * 150 }).vesselL).toBe(75)
    // Up to 5 g a litre under 20 L, 2 g in larger vessels: Lavens, Thongrod & Sorgeloos 2000, ch. 6 (Blackwell).
    expect(artemiaHatchPlan({ ...wanted, nauplii: 200_000 * 99 }).vesselL).toBeCloseTo(19.8, 9)
    expect(artemiaHatchPlan({ ...wanted, nauplii: 200_000 * 110 }).vesselL).toBe(55)
    const split = artemiaHatchPlan({ ...wanted, nauplii: 200_000 * 150, vesselL: 10 })
    expect(split.vessels).toBe(3)
    expect(split.notes).toContain('several-vessels')
  })

  it('says when nauplii enriched for a day are too large for first Artemia', () => {
    expect(artemiaHatchPlan({ ...wanted, enrichHours: 24 }).notes).toContain('too-large-for-first-artemia')
  })

  it.each([
    ['neededAt', { neededAt: 'Thursday' }],
    ['neededAt', { neededAt: '2026-03-05T08:00:00' }],
    ['neededAt', { neededAt: Number.NaN }],
    // ECMA-262, 21.4.1.1: no date lies farther from 1970 than 100,000,000 days; hours are taken off this one.
    ['neededAt', { neededAt: -8.64e15 }],
    ['neededAt', { neededAt: new Date(8.64e15) }],
    ['nauplii', { nauplii: 0 }],
    ['naupliiPerGram', { naupliiPerGram: -5 }],
    ['enrichHours', { enrichHours: 100 }],
    ['temperatureC', { temperatureC: 5 }],
    ['vesselL', { vesselL: 0 }],
  ])('refuses a bad %s', (argument, change) => {
    expect(() => artemiaHatchPlan({ ...wanted, ...change })).toThrow(argument)
  })
})

describe('hatchingTest', () => {
  const samples = [
    { nauplii: 150, umbrella: 20, embryos: 30 },
    { nauplii: 160, umbrella: 15, embryos: 25 },
    { nauplii: 140, umbrella: 25, embryos: 35 },
  ]

  it('gives percentage and yield with their intervals', () => {
    const lot = hatchingTest({ samples })
    expect(lot.hatchingPercent).toBeCloseTo(75, 12)
    expect(lot.naupliiPerGram).toBeCloseTo(200 * 150, 9)
    expect(lot.naupliiPerGramInterval.lower).toBeLessThan(30_000)
    expect(lot.naupliiPerGramInterval.upper).toBeGreaterThan(30_000)
    expect(lot.hatchingPercentInterval.lower).toBeGreaterThan(70)
  })

  it('refuses fewer than three samples and a lot in which nothing was seen', () => {
    expect(() => hatchingTest({ samples: samples.slice(0, 2) })).toThrow('samples.length is 2')
    const none = { nauplii: 0, umbrella: 0, embryos: 0 }
    expect(() => hatchingTest({ samples: [none, none, none] })).toThrow(
      'samples is all zero; allowed: at least one cyst seen',
    )
    for (const stage of ['nauplii', 'umbrella', 'embryos']) {
      const half = [none, none, { ...none, [stage]: 0.5 }]
      expect(() => hatchingTest({ samples: half })).toThrow(
        `samples[2].${stage} is 0.5; allowed: a whole number from 0`,
      )
    }
  })
})

describe('how sure a hatching test is', () => {
  const three = (nauplii: number, embryos: number) => [
    { nauplii, umbrella: 0, embryos },
    { nauplii: 0, umbrella: 0, embryos: 0 },
    { nauplii: 0, umbrella: 0, embryos: 0 },
  ]

  it('in per cent: 81 of 263 lie between 25.53 and 36.62 (Newcombe 1998, Stat. Med. 17:857-872, table I)', () => {
    const { hatchingPercentInterval } = hatchingTest({ samples: three(81, 182) })
    expect(hatchingPercentInterval.lower).toBeCloseTo(25.53, 2)
    expect(hatchingPercentInterval.upper).toBeCloseTo(36.62, 2)
  })

  it('in nauplii per gram: 100 counted may be 81.36 to 121.63 (Garwood 1936), in three samples of 0.25 of 80 mL', () => {
    const { naupliiPerGramInterval } = hatchingTest({ samples: three(100, 0) })
    const perGram = 80 / (3 * 0.25) / 1.6
    expect(naupliiPerGramInterval.lower / perGram).toBeCloseTo(81.36, 1)
    expect(naupliiPerGramInterval.upper / perGram).toBeCloseTo(121.63, 1)
  })

  it.each(['cystsG', 'volumeMl', 'sampleMl'])('is refused with no %s, and it says of what', (argument) => {
    const unit = argument === 'cystsG' ? 'g' : 'mL'
    expect(() => hatchingTest({ samples: three(10, 10), [argument]: 0 })).toThrow(
      new RegExp(`^${argument} is 0.* ${unit}`),
    )
  })
})

describe('decapsulation', () => {
  it('keeps chlorine and volume whatever the bleach, and is never without its cautions', () => {
    const weak = decapsulation({ cystsG: 10 })
    const strong = decapsulation({ cystsG: 10, bleachPercent: 10.5 })
    expect(strong.bleachMl).toBeCloseTo(weak.bleachMl / 2, 9)
    expect(strong.activeChlorineG).toBeCloseTo(weak.activeChlorineG, 9)
    expect(strong.totalMl).toBeCloseTo(weak.totalMl, 9)
    expect(strong.cautions).toContain('never-mix-hypochlorite-with-acid-or-ammonia')
    expect(strong.highestTemperatureC).toBe(40)
  })

  it.each([
    ['cystsG', { cystsG: 0 }],
    ['cystsG', { cystsG: 501 }],
    ['bleachPercent', { cystsG: 10, bleachPercent: 2 }],
  ])('refuses a bad %s', (argument, input) => {
    expect(() => decapsulation(input)).toThrow(argument)
  })
})

describe('what an Artemia plan and a lot are told', () => {
  const wanted = { neededAt: '2026-03-05T08:00:00Z', nauplii: 500_000, temperatureC: 28 }
  const hoursAhead = (at: string) => (Date.parse(wanted.neededAt) - Date.parse(at)) / 3_600_000

  it('hatches from 15 to 33 C, and says where no figure is published: under 20, and over 30 where 25 to 28 are best', () => {
    for (const temperatureC of [15, 33]) expect(() => artemiaHatchHours({ temperatureC })).not.toThrow()
    for (const temperatureC of [14.9, 33.1])
      expect(() => artemiaHatchHours({ temperatureC })).toThrow('allowed: a number from 15 to 33 C')
    const at = (temperatureC: number) => {
      const { notes } = artemiaHatchPlan({ ...wanted, temperatureC })
      return [artemiaHatchHours({ temperatureC }).isExtrapolated, ...notes]
    }
    expect([19.9, 20, 30, 30.1].map(at)).toEqual([
      [true, 'slower-than-published-range'],
      [false],
      [false],
      [true, 'warmer-than-best'],
    ])
  })

  it('leaves time to sieve and rinse before the moult', () => {
    const plan = artemiaHatchPlan({ ...wanted, enrichHours: 12, handlingHours: 2 })
    // 8 h to instar II (Lavens & Sorgeloos 1996, FAO 361, sect. 4.1), 24 h to hatch at 28 C.
    expect([plan.enrichAt!, plan.harvestAt, plan.startAt].map(hoursAhead)).toEqual([12, 12 + 8 + 2, 12 + 8 + 2 + 24])
    expect(hoursAhead(artemiaHatchPlan({ ...wanted, handlingHours: 2 }).harvestAt)).toBe(2)
  })

  it('knows the enrichments that are published, of 12 and of 24 hours', () => {
    const notes = (enrichHours: number) => artemiaHatchPlan({ ...wanted, enrichHours }).notes
    expect([0, 12, 18, 23.9, 24, 36].map(notes)).toEqual([
      [],
      [],
      ['enrichment-not-12-or-24-hours'],
      ['enrichment-not-12-or-24-hours'],
      ['too-large-for-first-artemia'],
      ['enrichment-not-12-or-24-hours', 'too-large-for-first-artemia'],
    ])
  })

  it('loads a vessel of 20 L as a large one, with 2 g a litre', () => {
    const grams = (cystsG: number, vesselL?: number) =>
      artemiaHatchPlan({ ...wanted, nauplii: cystsG, naupliiPerGram: 1, ...(vesselL === undefined ? {} : { vesselL }) })
    expect(grams(100).vesselL).toBe(50)
    expect([grams(100, 20).vessels, grams(100, 19.9).vessels, grams(40, 20).vessels]).toEqual([3, 2, 1])
    expect(grams(40, 20).notes).toEqual([])
    // A hundredth over is another vessel; what rounding makes of 0.3 g in 0.06 L is none.
    expect([grams(40.4, 20).vessels, grams(0.1 + 0.2, 0.06).vessels]).toEqual([2, 1])
  })

  it('takes an instant only with its zone, and so far from the end of dates that the hours before it are dates too', () => {
    const allowed = 'an ISO 8601 instant with its zone, or milliseconds since 1970'
    // A year of six digits has a sign, which is no zone.
    for (const neededAt of ['+002026-03-05T08:00:00', '2026-03-05', 'Z'])
      expect(() => artemiaHatchPlan({ ...wanted, neededAt })).toThrow(`neededAt is ${neededAt}; allowed: ${allowed}`)
    expect(artemiaHatchPlan({ ...wanted, neededAt: '2026-03-05t08:00:00z' }).neededAt).toBe('2026-03-05T08:00:00.000Z')
    expect(artemiaHatchPlan({ ...wanted, neededAt: '2026-03-05T08:00:00-0530' }).neededAt).toBe(
      '2026-03-05T13:30:00.000Z',
    )
    const farthest = 8.64e15 - 31 * 86_400_000
    for (const neededAt of [farthest, -farthest]) {
      expect(() => artemiaHatchPlan({ ...wanted, neededAt })).not.toThrow()
      expect(() => artemiaHatchPlan({ ...wanted, neededAt: neededAt + Math.sign(neededAt) })).toThrow('neededAt')
    }
  })

  it.each([
    ['nauplii is 0; allowed: a finite number above 0 nauplii', { nauplii: 0 }],
    ['naupliiPerGram is 0; allowed: a finite number above 0 nauplii per g', { naupliiPerGram: 0 }],
    ['enrichHours is 48.1; allowed: a number from 0 to 48 hours', { enrichHours: 48.1 }],
    ['enrichHours is -1', { enrichHours: -1 }],
    ['handlingHours is 12.1; allowed: a number from 0 to 12 hours', { handlingHours: 12.1 }],
    ['handlingHours is -1', { handlingHours: -1 }],
    ['vesselL is 0; allowed: a finite number above 0 L', { vesselL: 0 }],
  ])('is refused where %s', (sentence, change) => {
    expect(() => artemiaHatchPlan({ ...wanted, enrichHours: 48, handlingHours: 12 })).not.toThrow()
    expect(() => artemiaHatchPlan({ ...wanted, ...change })).toThrow(sentence)
  })

  it('keeps nauplii a day under 10 C, 8 million to a litre (Ghent Univ. shrimp nutrition course)', () => {
    expect(COLD_STORE).toEqual({ belowC: 10, naupliiPerL: 8e6, longestHours: 24 })
  })

  it('takes shells off a tenth of the cysts with a tenth of everything', () => {
    const [all, tenth] = [decapsulation({ cystsG: 500 }), decapsulation({ cystsG: 50 })]
    for (const name of ['bleachMl', 'causticSodaG', 'waterMl', 'totalMl', 'activeChlorineG'] as const)
      expect(tenth[name] * 10, name).toBeCloseTo(all[name], 9)
  })

  it('takes shells off by the book: an hour to soak at most, minutes in bleach, under 40 C (FAO 361, sect. 4.2.3; from memory)', () => {
    expect(decapsulation({ cystsG: 500 })).toMatchObject({
      hydrateMinutes: { from: 30, to: 60 },
      reactMinutes: { from: 2, to: 4 },
      thiosulphatePercent: 0.1,
      cautions: [
        'never-mix-hypochlorite-with-acid-or-ammonia',
        'caustic-soda-into-water-never-the-reverse',
        'goggles-and-gloves',
        'ventilate',
        'heats-up-keep-under-40-c',
        'neutralise-until-no-chlorine-is-left',
      ],
      source: expect.stringMatching(/no\. 43, 1997; cautions: FAO 361/),
    })
  })

  it.each([
    ['cystsG is 500.1; allowed: a finite number up to 500 g', { cystsG: 500.1 }],
    ['cystsG is 0; allowed: a finite number above 0 g', { cystsG: 0 }],
    ['bleachPercent is 3.9; allowed: a number from 4 to 15 % NaOCl', { cystsG: 1, bleachPercent: 3.9 }],
    ['bleachPercent is 15.1', { cystsG: 1, bleachPercent: 15.1 }],
  ])('and not where %s', (sentence, given) => {
    expect(() => decapsulation(given)).toThrow(sentence)
    // The weakest bleach that is taken is still less than all of the volume asked for.
    expect(decapsulation({ cystsG: 500, bleachPercent: 4 }).waterMl).toBeGreaterThan(0)
    expect(decapsulation({ cystsG: 500, bleachPercent: 15 }).waterMl).toBeGreaterThan(0)
  })
})
