import type { FoodOutlook } from '@fryward/shared'
import { describe, expect, it } from 'vitest'
import { afternoonCalls, type NestPull } from './say-call.ts'

const voice = { units: 'metric', locale: 'en-GB', timeZone: 'UTC' } as const
const today = '2026-03-10'
const band = { p10: 0, p50: 0, p90: 0 }
const day = (date: string, gives: FoodOutlook['days'][number]['gives']) => ({
  ...{ date, gives, cultures: [], eaters: [], wanted: band, couldGive: band, chanceShort: 0, nauplii: 0 },
  short: { mean: 0, p90: 0 },
})
const culture = (id: string, name: string, standing: 'gives' | 'backup'): FoodOutlook['cultures'][number] => ({
  ...{ id, cultureId: id, name, volumeL: 18, standing, sharesCausesWith: [] },
})
const clutch = (probability: number): FoodOutlook['eaters'][number] => ({
  ...{ id: 'c', kind: 'clutch', subjectId: 'c', name: 'Clutch 3', larvae: 200 },
  nights: [{ date: today, probability }],
})
const outlook = (part: Partial<FoodOutlook> = {}): FoodOutlook => ({
  days: [day(today, []), day('2026-03-11', [{ cultureId: 'r', eaterId: 'c', volumeL: 0.6, animals: 1e5 }])],
  cultures: [
    { ...culture('r', 'R1', 'gives'), sharesCausesWith: [{ cultureId: 's', causes: ['bottle', 'tools'] }] },
    culture('s', 'R2', 'backup'),
  ],
  ...{ eaters: [clutch(0.5)], worry: null, shortTotal: 0, backupsUsed: [], gaps: [], ...part },
})
const call = (of: FoodOutlook, pull: NestPull = null) => afternoonCalls(of, { today, voice, pullOf: () => pull })[0]

describe('the afternoon call', () => {
  it('says how likely it is, what to have ready, the weakest point and the other choice', () => {
    expect(call(outlook(), { dueAt: '2026-03-10T17:30:00.000Z', isDone: false })).toEqual({
      clutchId: 'c',
      probability: 0.5,
      title: 'Clutch 3 may hatch tonight: likely (50%)',
      pull: 'Pull the nest by 17:30, before dark.',
      food: [
        'Have 1.2 L of R1 ready for their first day.',
        'The food lasts as far as can be seen.',
        'The weakest point is R1, which shares its feed bottle and tools with R2. If it goes, the backup R2 has to feed.',
      ],
      otherChoice: 'The other choice is to leave Clutch 3 with its parents.',
    })
  })

  it('says how long the food lasts, in days of their life', () => {
    const worry = { date: '2026-03-19', chanceShort: 0.3, eaterIds: ['c'], shortMean: 1 }
    expect(call(outlook({ worry }))?.food[1]).toBe(
      'The food lasts to day 7 of their life; from day 8 on it may fall short.',
    )
    expect(call(outlook({ worry: { ...worry, date: today } }))?.food[1]).toBe(
      'The food is short from their first day on.',
    )
    expect(call(outlook({ worry: { ...worry, date: today, eaterIds: ['b'] } }))?.food[1]).toBe(
      'The food is short for others from their first day on.',
    )
  })

  it('says that a nest may wait or is pulled, and that nothing stands in', () => {
    expect(call(outlook())?.pull).toMatch(/^Wait with the nest/)
    expect(call(outlook(), { dueAt: '2026-03-10T17:30:00.000Z', isDone: true })?.pull).toBe('The nest is pulled.')
    expect(call(outlook({ cultures: [culture('r', 'R1', 'gives')] }))?.food[2]).toMatch(/nothing stands in for it\.$/)
    expect(call(outlook({ cultures: [culture('r', 'R1', 'gives'), culture('t', 'R3', 'gives')] }))?.food[2]).toMatch(
      /feed from R3\.$/,
    )
    expect(call(outlook({ days: [day(today, []), day('2026-03-11', [])] }))?.food).toEqual([
      'No culture can feed them tomorrow: leave this clutch with its parents, or buy in rotifers today.',
    ])
  })

  it('is made for nobody on a night that is hardly likely, or for what has hatched', () => {
    expect(call(outlook({ eaters: [clutch(0.02)] }))).toBeUndefined()
    expect(call(outlook({ eaters: [{ ...clutch(0.9), kind: 'larval_batch', nights: [] }] }))).toBeUndefined()
  })
})
