import type { FoodChange, FoodOutlook } from '@fryward/shared'
import { describe, expect, test } from 'vitest'
import { SnapshotBuilder } from '../../../husbandry/src/testing/snapshot-builder.ts'
import { cultureAhead, foodAheadOf, outlookDay, outlookOf } from '../testing/made-up-food.ts'
import { curesToTry } from './cures.ts'

const worryOn = (date: string): FoodOutlook['worry'] => ({ date, chanceShort: 0.5, eaterIds: [], shortMean: 1e5 })
const worry = worryOn('2026-03-20')
const clutch = (
  id: string,
  { larvae = 300, hatches = '2026-03-18' as string | null, kind = 'clutch' as const } = {},
) => ({
  ...{ id, kind, subjectId: `the ${id}`, name: id, larvae },
  nights: hatches === null ? [] : [{ date: hatches, probability: 1 }],
})
const eating = (...ids: string[]) =>
  outlookDay('2026-03-21', { eaters: ids.map((id) => ({ id, wanted: 1e5, got: 5e4, chanceShort: 0.5 })) })

function cures({
  outlook = {},
  ahead = {},
  room = new SnapshotBuilder(),
}: {
  outlook?: Partial<FoodOutlook>
  ahead?: Parameters<typeof foodAheadOf>[0]
  room?: SnapshotBuilder
}) {
  return curesToTry(room.build(), { ahead: foodAheadOf(ahead), outlook: outlookOf({ worry, ...outlook }) })
}
const ofKind = <K extends FoodChange['kind']>(all: FoodChange[], kind: K) =>
  all.filter((change): change is Extract<FoodChange, { kind: K }> => change.kind === kind)

describe('what might cure a worry', () => {
  test('is nothing where there is none, or nothing that could give, eat or be missing', () => {
    expect(cures({ outlook: { worry: null, shortTotal: 1e6 } })).toEqual([])
    expect(cures({})).toEqual([])
  })

  test('is asked of what stands: thinning, backups, the reserve', () => {
    const kinds = (given: Parameters<typeof cultureAhead>[0]) =>
      cures({ ahead: { cultures: [cultureAhead({ standing: 'in_doubt', ...given })] } }).map(({ kind }) => kind)
    expect(kinds({})).toEqual([])
    expect(kinds({ thinnedToAnimals: 5e5 })).toEqual(['thin_less'])
    expect(kinds({ standing: 'backup' })).toEqual(['use_backups'])
    expect(kinds({ standing: 'chilled' })).toEqual(['use_reserve'])
  })

  test('is not asked again of what the room does already', () => {
    const room = new SnapshotBuilder()
    const at = '2026-03-09T08:00:00.000Z'
    room.fact('cure', room.snapshot.room.id, at, { change: { kind: 'use_backups' }, planMadeAt: at })
    const cultures = [cultureAhead({ standing: 'backup', thinnedToAnimals: 5e5 })]
    expect(cures({ room, ahead: { cultures } }).map(({ kind }) => kind)).toEqual(['thin_less'])
  })

  test('is to raise less of the largest clutch that eats by then: half, a quarter, or none', () => {
    const of = (...eaters: ReturnType<typeof clutch>[]) =>
      cures({ outlook: { eaters, days: [eating(...eaters.map(({ id }) => id))] } })
    const kept = (all: FoodChange[]) => ofKind(all, 'keep_larvae').map(({ subjectId, larvae }) => [subjectId, larvae])
    const both = of(clutch('small', { larvae: 120 }), clutch('large', { larvae: 260 }))
    // Half of 260 is 130, a quarter 65: to the next ten 70.
    expect(kept(both)).toEqual([
      ['the large', 130],
      ['the large', 70],
    ])
    expect(ofKind(both, 'leave_clutch')).toEqual([{ kind: 'leave_clutch', clutchId: 'the large' }])
    // 1,500 and 750 are said in fifties; a half of 780 is 390, said as 400.
    expect(kept(of(clutch('many', { larvae: 3000 }))).map(([, larvae]) => larvae)).toEqual([1500, 750])
    expect(kept(of(clutch('some', { larvae: 780 }))).map(([, larvae]) => larvae)).toEqual([400, 200])
    // So few are left or raised, not halved.
    expect(of(clutch('few', { larvae: 20 })).map(({ kind }) => kind)).toEqual(['leave_clutch', 'artemia_sooner'])
    expect(kept(of(clutch('few', { larvae: 21 }))).map(([, larvae]) => larvae)).toEqual([10, 10])
    expect(ofKind(of(clutch('uncounted', { larvae: null as never })), 'keep_larvae')).toEqual([])
  })

  test('is no clutch that hatches a week after the worry, eats nothing, or is a batch already', () => {
    const isLeft = (eater: ReturnType<typeof clutch>, days = [eating('c')]) =>
      ofKind(cures({ outlook: { eaters: [eater], days } }), 'leave_clutch').length === 1
    expect(isLeft(clutch('c', { hatches: '2026-03-26' }))).toBe(true)
    expect(isLeft(clutch('c', { hatches: '2026-03-27' }))).toBe(false)
    expect(isLeft(clutch('c', { hatches: null }))).toBe(true)
    expect(
      isLeft(clutch('c'), [outlookDay('2026-03-21', { eaters: [{ id: 'c', wanted: 0, got: 0, chanceShort: 0 }] })]),
    ).toBe(false)
    expect(isLeft(clutch('c', { kind: 'larval_batch' as never }))).toBe(false)
    expect(isLeft(clutch('c'), [eating('another')])).toBe(false)
  })

  test('is another culture like those that stand, of the fullest that gives, tomorrow or half way to the worry', () => {
    const cultures = [
      cultureAhead({ id: 'thin', volumeL: 10, animals: 1e6 }),
      cultureAhead({ id: 'full', volumeL: 20, animals: 9e6 }),
      cultureAhead({ id: 'young', volumeL: 60, animals: 9e7, standing: 'too_young' }),
      cultureAhead({ id: 'large', volumeL: 40, animals: 2e6 }),
    ]
    // In 20 L, the middle one of those that give, at 60 per mL: 1.2 million.
    const started = { kind: 'start_culture' as const, cultureId: 'full', volumeL: 20, animals: 1.2e6 }
    expect(ofKind(cures({ ahead: { cultures } }), 'start_culture')).toEqual([
      { ...started, onDate: '2026-03-11' },
      { ...started, onDate: '2026-03-15' },
    ])
    // No more than may be taken of it: two fifths of 1.55 million, to the next hundred thousand up.
    const poor = [cultureAhead({ volumeL: 20, animals: 1.55e6, mostShare: 0.4 })]
    expect(ofKind(cures({ ahead: { cultures: poor } }), 'start_culture')[0]?.animals).toBe(7e5)
    const soon = { worry: worryOn('2026-03-12') }
    expect(ofKind(cures({ ahead: { cultures: poor }, outlook: soon }), 'start_culture')).toHaveLength(1)
  })

  test('is to buy what is missing and what sieving loses, for the last day of post before it is missing', () => {
    // 2.7 million with a tenth lost in sieving are three, whole millions being sold.
    const bought = (shortTotal: number) => ofKind(cures({ outlook: { shortTotal } }), 'buy_in')
    expect(bought(2.7e6)).toMatchObject([{ animals: 3e6 }])
    expect(bought(2.71e6)).toMatchObject([{ animals: 4e6 }])
    expect(bought(0)).toEqual([])
    const { onDate } = bought(1)[0]!
    expect(onDate <= worry!.date && onDate > '2026-03-10').toBe(true)
  })
})
