import type { CureChange } from '@fryward/shared'
import { describe, expect, test } from 'vitest'
import { husbandryDay } from '../../calendar/husbandry-day.ts'
import type { TaskDraft } from '../../engine/draft-day.ts'
import { foodAhead } from '../../food/food-ahead.ts'
import { deliveryBy } from '../../plans/delivery-days.ts'
import { topUpPlans } from '../../plans/top-up-plan.ts'
import type { Rule } from '../../rule/rule.ts'
import { curesInForce } from '../../state/cures.ts'
import { onlyDraft, SnapshotBuilder } from '../../testing/snapshot-builder.ts'
import { steadyCulture } from '../../testing/steady-culture.ts'
import { foodKeepLarvae } from '../larvae/food-keep-larvae.ts'
import { artemiaStart } from './artemia-start.ts'
import { foodBuyIn } from './food-buy-in.ts'
import { foodStartCulture } from './food-start-culture.ts'

// A Tuesday.
const date = '2026-03-10'
const planMadeAt = `${date}T06:50:00.000Z`

function choose(room: SnapshotBuilder, change: CureChange) {
  return room.fact('cure', room.snapshot.room.id, `${date}T06:55:00.000Z`, { change, planMadeAt })
}
const signOff = (rule: Rule, { context, content, subjectId }: TaskDraft, values: Record<string, unknown> = {}) =>
  rule.record({ context, content, subjectId, values, doneAt: `${date}T12:40:00.000Z` })
const planned = ({ content }: TaskDraft) => content.because.filter(({ origin }) => origin.kind === 'food_plan')

describe('a culture that was chosen on the plan', () => {
  test('is started on its day with as many as the plan says, out of the culture that it names', () => {
    const room = new SnapshotBuilder()
    const parent = steadyCulture(room, { date })
    choose(room, { kind: 'start_culture', cultureId: parent.id, volumeL: 10, animals: 600_000, onDate: date })
    expect(room.drafts('2026-03-09', [foodStartCulture]).drafts).toEqual([])
    const draft = onlyDraft(room.drafts(date, [foodStartCulture]))
    expect(planned(draft)).toMatchObject([{ quantity: { value: 600_000 }, origin: { madeAt: planMadeAt } }])
    const { creations } = signOff(foodStartCulture, draft)
    expect(creations).toMatchObject([{ kind: 'culture', parentCultureId: parent.id, volumeL: 10, strain: 'L' }])
    const [made] = creations!
    if (made?.kind !== 'culture') throw new Error('No culture was made')
    // 60 per mL, within the mark of a jug.
    expect(made.startDensityPerMl).toBeGreaterThan(59)
    expect(made.startDensityPerMl).toBeLessThan(66)
    expect(made.drawnL).toBe(draft.content.amount!.value)
    room.culture({ startedAt: `${date}T12:40:00.000Z`, parentCultureId: parent.id })
    expect(room.drafts('2026-03-11', [foodStartCulture]).drafts).toEqual([])
  })

  test('gets no more than its parent may give that day', () => {
    const room = new SnapshotBuilder()
    const parent = steadyCulture(room, { date })
    choose(room, { kind: 'start_culture', cultureId: parent.id, volumeL: 60, animals: 2e7, onDate: date })
    expect(onlyDraft(room.drafts(date, [foodStartCulture])).content.amount!.value).toBeLessThanOrEqual(
      parent.volumeL / 2,
    )
  })

  test('is counted on by the plan from then on', () => {
    const room = new SnapshotBuilder()
    const parent = steadyCulture(room, { date })
    const cultures = () =>
      foodAhead(room.build(), {
        horizon: { today: date, days: 21, futures: 10 },
        changes: [],
        record: { crashes: 0, cultureDays: 0, lived: [] },
      }).cultures.length
    expect(cultures()).toBe(1)
    choose(room, { kind: 'start_culture', cultureId: parent.id, volumeL: 10, animals: 600_000, onDate: '2026-03-12' })
    expect(cultures()).toBe(2)
  })
})

describe('rotifers that were chosen to be bought in', () => {
  test('are ordered once, and set up on the day they come', () => {
    const room = new SnapshotBuilder()
    steadyCulture(room, { date })
    choose(room, { kind: 'buy_in', animals: 4e6, onDate: '2026-03-13' })
    const order = onlyDraft(room.drafts(date, [foodBuyIn]))
    expect(order.content.title).toMatchObject({ deed: 'order', details: [{ kind: 'to_come_on', date: '2026-03-13' }] })
    for (const fact of signOff(foodBuyIn, order).facts) room.append(fact, { at: `${date}T12:40:00.000Z` })
    expect(room.drafts('2026-03-11', [foodBuyIn]).drafts).toEqual([])
    const arrival = onlyDraft(room.drafts('2026-03-13', [foodBuyIn]))
    // 4 million at 200 a mL, the densest that one starts with: 20 L.
    expect(arrival.content.fields[1]).toMatchObject({ name: 'volumeL', usual: 20 })
    expect(signOff(foodBuyIn, arrival, { animals: 3e6, volumeL: 15 }).creations).toMatchObject([
      { kind: 'culture', parentCultureId: null, volumeL: 15, startDensityPerMl: 200 },
    ])
  })

  test('come on a day of post, in time where they can', () => {
    const room = new SnapshotBuilder()
    const by = (day: string) => deliveryBy(room.build(), { today: date, by: day })
    expect(by('2026-03-13')).toBe('2026-03-13')
    // A Sunday: the Friday before it.
    expect(by('2026-03-15')).toBe('2026-03-13')
    // Too soon: as soon as they can come.
    expect(by('2026-03-10')).toBe('2026-03-12')
    room.setting('food-buy-in', { parameters: { deliveryDays: 4 } })
    // Saturday and Sunday bring no parcels.
    expect(by('2026-03-10')).toBe('2026-03-16')
  })
})

test('fewer larvae are kept of a batch where its clutch was chosen, and the others leave the book as what they were', () => {
  const room = new SnapshotBuilder()
  const clutch = room.clutch(room.pair(), { spawnedAt: '2026-03-01T18:00:00.000Z', eggs: 700 })
  choose(room, { kind: 'keep_larvae', subjectId: clutch.id, larvae: 300 })
  room.batch({ hatchedOn: '2026-03-09', clutchIds: [clutch.id], larvae: 600 })
  const draft = onlyDraft(room.drafts(date, [foodKeepLarvae]))
  expect(draft.content.cautions.join(' ')).toContain('Never release')
  expect(foodKeepLarvae.check?.({})).toMatchObject([{ path: 'placed' }])
  const { facts } = signOff(foodKeepLarvae, draft, { placed: 250, culled: 50 })
  for (const fact of facts) room.append(fact, { at: `${date}T12:40:00.000Z` })
  expect(facts.map(({ kind, data }) => [kind, data])).toEqual([
    ['outcome', { outcome: 'placed', number: 250 }],
    ['outcome', { outcome: 'culled', number: 50 }],
  ])
  expect(room.drafts(date, [foodKeepLarvae]).drafts).toEqual([])
})

test('what was chosen holds for the three weeks that a plan looks ahead; a start or a parcel until a week late', () => {
  const inForce = (change: CureChange, on: string) => {
    const room = new SnapshotBuilder()
    choose(room, change)
    return curesInForce(room.build(), husbandryDay({ room: room.snapshot.room, date: on })).length
  }
  const keep = { kind: 'keep_larvae', subjectId: new SnapshotBuilder().nextId(), larvae: 300 } as const
  expect([inForce(keep, '2026-03-30'), inForce(keep, '2026-03-31')]).toEqual([1, 0])
  const parcel = { kind: 'buy_in', onDate: '2026-03-12', animals: 1_000_000 } as const
  expect([inForce(parcel, '2026-03-18'), inForce(parcel, '2026-03-19')]).toEqual([1, 0])
})

test('a tenth more larvae than there is food for is the error of a count by eye, and parts nobody from their tank', () => {
  const asked = (larvae: number) => {
    const room = new SnapshotBuilder()
    const clutch = room.clutch(room.pair(), { spawnedAt: '2026-03-01T18:00:00.000Z', eggs: 700 })
    choose(room, { kind: 'keep_larvae', subjectId: clutch.id, larvae: 300 })
    room.batch({ hatchedOn: '2026-03-09', clutchIds: [clutch.id], larvae })
    return room.drafts(date, [foodKeepLarvae]).drafts
  }
  expect(asked(329)).toEqual([])
  expect(asked(332)).toHaveLength(1)
})

test('Artemia that was chosen sooner ends rotifers two days after its first, and is begun for all that they leave', () => {
  const room = new SnapshotBuilder()
  const culture = steadyCulture(room, { date })
  room.culture({ startedAt: '2026-02-20T07:00:00.000Z', kind: 'artemia_hatch', strain: null, temperatureC: 28 })
  // Day 6 of life tomorrow; nauplii from day 4 on.
  const batch = room.batch({ hatchedOn: '2026-03-04', larvae: 300 })
  room.feedLink(batch, culture)
  const feedsOn = (day: string) =>
    topUpPlans(room.build(), batch, husbandryDay({ room: room.snapshot.room, date: day }))
  const cysts = () => onlyDraft(room.drafts(date, [artemiaStart])).content.amount!.value
  const [usual, before] = [feedsOn('2026-03-13'), cysts()]
  expect(usual).not.toBeNull()
  choose(room, { kind: 'artemia_sooner' })
  expect(feedsOn('2026-03-13')).toBeNull()
  expect(cysts()).toBeGreaterThan(before)
  expect(planned(onlyDraft(room.drafts(date, [artemiaStart])))).toMatchObject([{ origin: { madeAt: planMadeAt } }])
})
