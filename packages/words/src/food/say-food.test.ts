import type { FoodOutlook } from '@fryward/shared'
import { describe, expect, it } from 'vitest'
import { sayAfter, sayFoodAhead, sayFoodChange, sayFoodWorry, sayNotAsked } from './say-food.ts'

const voice = { units: 'metric', locale: 'en-GB' } as const
const today = '2026-03-10'
const asked = { today, voice }
const eater = (id: string, kind: 'larval_batch' | 'clutch' | 'spawning', name: string) => ({
  ...{ id, kind, name, subjectId: id, larvae: 200, nights: [] },
})
const worry = { date: '2026-03-12', chanceShort: 0.62, eaterIds: ['b', 's'], shortMean: 4e5 }
const outlook = (part: Partial<FoodOutlook> = {}): FoodOutlook => ({
  ...{ days: [], cultures: [], worry: null, shortTotal: 0, backupsUsed: [], gaps: [] },
  eaters: [eater('b', 'larval_batch', 'B1'), eater('c', 'clutch', 'Clutch 3'), eater('s', 'spawning', 'Pair 1')],
  ...part,
})

describe('the food ahead in words', () => {
  it('says the first day of worry, how likely it is and for whom', () => {
    expect(sayFoodAhead(outlook({ worry }), asked)).toBe(
      'Thursday rotifers may fall short for B1 and a clutch to come of Pair 1: likely (62%).',
    )
    expect(sayFoodWorry(outlook({ worry: { ...worry, date: today, eaterIds: ['b'] } }), asked)).toBe(
      'Today rotifers may fall short for B1: likely (62%).',
    )
  })

  it('says that there is none, or nobody to feed', () => {
    expect(sayFoodAhead(outlook(), asked)).toBe('There are rotifers for all until Tue 10 Mar, as far as can be seen.')
    expect(sayFoodAhead(outlook({ eaters: [] }), asked)).toMatch(/^Nobody will want rotifers until/)
    expect(sayFoodWorry(outlook(), asked)).toBeNull()
  })

  it('names each thing that can be done by what it is done to', () => {
    const named = { ...asked, nameOf: (id: string) => ({ r: 'R1', c: 'Clutch 3', p: 'Pair 1' })[id] ?? '?' }
    const say = (change: Parameters<typeof sayFoodChange>[0]) => sayFoodChange(change, named)
    expect(say({ kind: 'keep_larvae', subjectId: 'c', larvae: 150 })).toBe('Keep only 150 larvae of Clutch 3')
    expect(say({ kind: 'start_culture', cultureId: 'r', volumeL: 18, animals: 1.1e6, onDate: '2026-03-11' })).toBe(
      'Start a culture of 18 L by tomorrow with 1.1 million rotifers from R1',
    )
    expect(say({ kind: 'buy_in', animals: 3e6, onDate: '2026-03-13' })).toBe('Buy in 3 million rotifers for Friday')
    expect(say({ kind: 'pair_spawns', pairId: 'p' })).toBe('Pair 1 spawns tonight')
    expect(say({ kind: 'another_pair', likePairId: 'p' })).toBe('Another pair lays as Pair 1 does')
    expect(say({ kind: 'away', days: 1 })).toBe('We are away for 1 day')
  })

  it('says what a change makes of the worry', () => {
    const before = { worry, shortTotal: 2e6 }
    expect(sayAfter({ worry: null, shortTotal: 0 }, before, asked)).toBe('Then no day is one of worry.')
    expect(sayAfter({ worry: { ...worry, date: '2026-03-14' }, shortTotal: 1e6 }, before, asked)).toBe(
      'Then the first day of worry is Saturday, likely (62%), about 1 million rotifers missing in all.',
    )
    expect(sayAfter({ worry, shortTotal: 1e6 }, before, asked)).toBe(
      'The first day of worry stays Thursday, likely (62%), with about 1 million rotifers missing in all instead of 2 million.',
    )
  })
})

describe('pairs that cannot be asked about', () => {
  const pair = (name: string, firstFood: 'rotifer' | 'artemia', isPlanned: boolean) => ({
    ...{ pairId: name, name, firstFood, eatsRotifers: firstFood === 'rotifer', isPlanned },
  })

  it('are told with what their young eat first, or that nobody knows when they would hatch', () => {
    expect(sayNotAsked([pair('Pair 1', 'rotifer', true)])).toBeNull()
    expect(sayNotAsked([pair('Pair 1', 'rotifer', true), pair('Pair 4', 'artemia', false)])).toBe(
      'Young of Pair 4 start on Artemia and eat no rotifers: if they spawn, nothing changes here.',
    )
    expect(sayNotAsked([pair('Pair 6', 'rotifer', false)])).toBe(
      'When a clutch of Pair 6 would hatch cannot be said, so it cannot be asked.',
    )
  })
})
