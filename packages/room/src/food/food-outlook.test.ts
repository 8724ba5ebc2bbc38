import type { FoodPlan } from '@fryward/planner'
import { describe, expect, test } from 'vitest'
import { cultureAhead, eaterAhead, foodAheadOf, plannedDay, triedDay } from '../testing/made-up-food.ts'
import { foodOutlook, worryOf } from './food-outlook.ts'

const planOf = (given: Partial<FoodPlan> = {}): FoodPlan => ({
  ...{ days: [plannedDay(), plannedDay()], shortfall: 0, lastResorts: [], tried: null },
  ...given,
})
const tried = (days: ReturnType<typeof triedDay>[], firstDayOfWorry: number | null = null): FoodPlan['tried'] => ({
  ...{ futures: 10, days, bands: [], firstDayOfWorry },
})

describe('a plan as it goes over the wire', () => {
  test('has dates for days, densities for animals and three digits', () => {
    const cultures = [cultureAhead({ volumeL: 10.0004 }), cultureAhead({ id: 'r2', volumeL: 2 })]
    const day = plannedDay({
      gives: [
        { cultureId: 'r1', eaterId: 'b', litres: 1.23456, animals: 123_456 },
        // Under a millilitre nobody measures.
        { cultureId: 'r2', eaterId: 'b', litres: 0.0009, animals: 90 },
        { cultureId: 'r2', eaterId: 'b', litres: 0.001, animals: 100 },
      ],
      cultures: [
        { id: 'r1', animals: 1_500_060, fedL: 1.23456, spareL: 0.98765 },
        { id: 'r2', animals: 400_000, fedL: 0, spareL: 0 },
      ],
      eaters: [{ id: 'b', wanted: 123_456, got: 111_111 }],
    })
    const { days, cultures: named } = foodOutlook(
      foodAheadOf({ cultures, eaters: [eaterAhead('b')] }),
      planOf({ days: [plannedDay({ cultures: [] }), day] }),
    )
    expect(named.map(({ id, cultureId, volumeL }) => [id, cultureId, volumeL])).toEqual([
      ['r1', null, 10],
      ['r2', null, 2],
    ])
    expect(days.map(({ date }) => date)).toEqual(['2026-03-10', '2026-03-11'])
    expect(days[1]).toMatchObject({
      gives: [
        { cultureId: 'r1', eaterId: 'b', volumeL: 1.23, animals: 123_000 },
        { cultureId: 'r2', volumeL: 0.001, animals: 100 },
      ],
      // 1.5 million in 10 L are 150 per mL, 400,000 in 2 L are 200.
      cultures: [
        { id: 'r1', densityPerMl: 150, fedL: 1.23, spareL: 0.988 },
        { id: 'r2', densityPerMl: 200, fedL: 0, spareL: 0 },
      ],
      eaters: [{ id: 'b', wanted: 123_000, got: 111_000, chanceShort: 0 }],
      ...{ chanceShort: 0, short: { mean: 0, p90: 0 }, wanted: { p10: 0, p50: 0, p90: 0 } },
      couldGive: { p10: 0, p50: 0, p90: 0 },
    })
  })

  test('says how likely each eater falls short, and what is missing over all days', () => {
    const eaters = [eaterAhead('a'), eaterAhead('b')]
    const wanting = plannedDay({ eaters: eaters.map(({ id }) => ({ id, wanted: 100, got: 90 })) })
    const bands = ['wanted', 'couldGive'].map((what, index) => [
      what,
      [1, 2].map((day) => ({ p10: day, p50: 10 * day, p90: 100 * (day + index) })),
    ])
    const trial = {
      ...tried([
        triedDay({ chance: 0.1, chances: [0.1, 0], short: { mean: 1200.4, p90: 4000 } }),
        triedDay({ chance: 0.3456, chances: [0.02, 0.3333], short: { mean: 2300, p90: 9000 } }),
      ])!,
      bands: [{ food: 'rotifers', ...Object.fromEntries(bands) }],
    }
    const plan = planOf({ days: [wanting, wanting], shortfall: 7, lastResorts: ['backup'], tried: trial })
    const outlook = foodOutlook(foodAheadOf({ eaters }), plan)
    expect(outlook.shortTotal).toBe(3500)
    expect(outlook.backupsUsed).toEqual(['backup'])
    expect(outlook.days[1]).toMatchObject({
      ...{ chanceShort: 0.346, short: { mean: 2300, p90: 9000 } },
      eaters: [{ chanceShort: 0.02 }, { chanceShort: 0.333 }],
      wanted: { p10: 2, p50: 20, p90: 200 },
      couldGive: { p10: 2, p50: 20, p90: 300 },
    })
    // Without futures there is only what the plan itself lacks.
    expect(foodOutlook(foodAheadOf({ eaters }), planOf({ shortfall: 1234 })).shortTotal).toBe(1230)
  })

  test('leaves out nights that hardly may be', () => {
    const nights = [0.0049, 0.005, 0.5].map((probability, index) => ({ date: `2026-03-1${index}`, probability }))
    const { eaters } = foodOutlook(foodAheadOf({ eaters: [eaterAhead('c', { nights })] }), planOf())
    expect(eaters[0]?.nights.map(({ probability }) => probability)).toEqual([0.005, 0.5])
  })

  test('says what batches want of Artemia, and what no hatch gives of it', () => {
    const batch = (batchId: string, wanted: number, got: number) => ({ batchId, name: batchId, wanted, got })
    const artemiaDay = {
      gives: [{ hatchId: 'cone', batchId: 'a', nauplii: 10_004 }],
      batches: [batch('a', 10_004, 10_004), batch('b', 5_000, 2_000)],
    }
    const vessel = { ...{ id: 'cone 1', name: 'Cone 1' }, kind: 'artemia' } as never
    const hatch = { id: 'cone', vessel, standing: 'kept' as const, nauplii: 12_345, readyAt: 'a', goodUntil: 'b' }
    const ahead = foodAheadOf({ artemia: { hatches: [hatch], days: [artemiaDay, artemiaDay], gaps: [] } })
    const { days, hatches } = foodOutlook(ahead, planOf())
    expect(hatches).toEqual([
      {
        ...{ id: 'cone', cultureId: 'cone 1', name: 'Cone 1', standing: 'kept' },
        nauplii: 12_300,
        readyAt: 'a',
        goodUntil: 'b',
      },
    ])
    expect(days[0]).toMatchObject({ nauplii: 15_000, artemia: { toHatch: 3_000, gives: [{ nauplii: 10_000 }] } })
    expect(days[0]?.artemia?.batches.map(({ got }) => got)).toEqual([10_000, 2_000])
    const few = { gives: [], batches: [batch('a', 5, 3)] }
    const { days: small } = foodOutlook(foodAheadOf({ artemia: { hatches: [], days: [few, few], gaps: [] } }), planOf())
    expect(small[0]).toMatchObject({ nauplii: 5, artemia: { toHatch: 2 } })
  })
})

describe('the worry of a plan', () => {
  const ahead = foodAheadOf({ eaters: ['a', 'b', 'c', 'd'].map((id) => eaterAhead(id)) })
  test('is its first bad day, with those who are about as likely as the likeliest to fall short', () => {
    const bad = triedDay({ chance: 0.45, chances: [0.2, 0.4, 0.19, 0], short: { mean: 77_777, p90: 1e5 } })
    expect(worryOf(ahead, { tried: tried([triedDay(), bad], 1) })).toEqual({
      ...{ date: '2026-03-11', chanceShort: 0.45, eaterIds: ['a', 'b'], shortMean: 77_800 },
    })
    // A day of worry may be today itself.
    expect(worryOf(ahead, { tried: tried([bad], 0) })?.date).toBe('2026-03-10')
  })
  test('is none where no day is bad, nor where nothing was tried', () => {
    expect(worryOf(ahead, { tried: tried([triedDay()]) })).toBeNull()
    expect(worryOf(ahead, { tried: null })).toBeNull()
  })
})
