import type { FoodOrders } from '@fryward/shared'
import { describe, expect, test } from 'vitest'
import type { SnapshotBatch, SnapshotCulture } from '../../snapshot/room-snapshot.ts'
import { SnapshotBuilder } from '../../testing/snapshot-builder.ts'
import { steadyCulture } from '../../testing/steady-culture.ts'
import { larvalPreyTopUp } from '../larvae/prey-top-up.ts'
import { rotiferHarvest } from './rotifer-harvest.ts'

const date = '2026-03-10'
const madeAt = `${date}T06:50:00.000Z`

type Order = { batch: SnapshotBatch; share?: number; from: [SnapshotCulture, number, number][] }

/** Two cultures and two batches that are linked to the first, and a plan of who eats from which. */
class PlannedRoom extends SnapshotBuilder {
  readonly one = steadyCulture(this, { date, name: 'R1' })
  readonly two = steadyCulture(this, { date, name: 'R2' })
  readonly first = this.larvae('B1')
  readonly second = this.larvae('B2')

  larvae(name: string): SnapshotBatch {
    const batch = this.batch({ name, hatchedOn: '2026-03-06', larvae: 300 })
    this.feedLink(batch, this.one)
    return batch
  }

  plan(orders: Order[], taken: [SnapshotCulture, number, number][] = [], onDate = date): void {
    const day: FoodOrders = {
      date: onDate,
      batches: orders.map(({ batch, share = 1, from }) => ({
        batchId: batch.id,
        share,
        from: from.map(([culture, volumeL, animals]) => ({ cultureId: culture.id, volumeL, animals })),
      })),
      cultures: taken.map(([{ id: cultureId }, fedL, spareL]) => ({ cultureId, fedL, spareL })),
    }
    this.snapshot.foodPlan = { madeAt, days: [day] }
  }

  feeds(batch: SnapshotBatch) {
    return this.drafts(date, [larvalPreyTopUp]).drafts.filter(({ subjectId }) => subjectId === batch.id)
  }
  harvests() {
    return this.drafts(date, [rotiferHarvest]).drafts
  }
}

const fromOf = (draft: { context: unknown }) => (draft.context as { cultureId: string }).cultureId
const mlOf = (draft: { context: unknown }) => (draft.context as { plannedMl: number }).plannedMl
const planLinks = (draft: { content: { because: { origin: { kind: string } }[] } }) =>
  draft.content.because.filter(({ origin }) => origin.kind === 'food_plan')

describe('a list with a plan of the food', () => {
  test('feeds each batch from the culture that the plan names, and says so', () => {
    const room = new PlannedRoom()
    room.plan([
      { batch: room.first, from: [[room.one, 2, 4e5]] },
      { batch: room.second, from: [[room.two, 2, 4e5]] },
    ])
    expect(room.feeds(room.first).map(fromOf)).toEqual(new Array(3).fill(room.one.id))
    const feeds = room.feeds(room.second)
    expect(feeds.map(fromOf)).toEqual(new Array(3).fill(room.two.id))
    expect(planLinks(feeds[0]!)).toMatchObject([
      { label: 'of R2 over the whole day', quantity: { value: 2, unit: 'L' }, origin: { kind: 'food_plan', madeAt } },
    ])
  })

  test('deals the feeds of a batch out among its cultures as the plan shares them', () => {
    const room = new PlannedRoom()
    const each = room.feeds(room.first).map(mlOf)
    expect(each).toHaveLength(3)
    room.plan([
      {
        batch: room.first,
        from: [
          [room.two, 2, 3e5],
          [room.one, 1, 1e5],
        ],
      },
    ])
    expect(room.feeds(room.first).map(fromOf)).toEqual([room.two.id, room.two.id, room.one.id])
  })

  test('gives what the plan has where there is less than is wanted', () => {
    const room = new PlannedRoom()
    const wanted = room.feeds(room.first).map(mlOf)
    room.plan([{ batch: room.first, share: 0.5, from: [[room.one, 1, 2e5]] }])
    const given = room.feeds(room.first)
    for (const [index, draft] of given.entries()) expect(mlOf(draft) / wanted[index]!).toBeCloseTo(0.5, 1)
    expect(given[0]!.content.steps.map(({ text }) => text).join(' ')).toContain('The plan of the food has less')
  })

  test('goes on as without it on another day, and when its culture is in doubt', () => {
    const room = new PlannedRoom()
    room.plan([{ batch: room.first, from: [[room.two, 2, 4e5]] }], [], '2026-03-09')
    expect(room.feeds(room.first).map(fromOf)).toEqual(new Array(3).fill(room.one.id))
    room.plan([{ batch: room.first, from: [[room.two, 2, 4e5]] }])
    room.fact('observation', room.two.id, `${date}T06:55:00.000Z`, { signs: ['foam', 'bad_smell'], note: '' })
    expect(room.feeds(room.first).map(fromOf)).toEqual(new Array(3).fill(room.one.id))
  })

  test('harvests what is eaten and thinned by the plan, never more than half', () => {
    const room = new PlannedRoom()
    const usual = room.harvests().map(({ content }) => content.amount!.value)
    room.plan(
      [{ batch: room.first, from: [[room.one, 2, 4e5]] }],
      [
        [room.one, 1.5, 0.5],
        [room.two, 30, 0],
      ],
    )
    const [one, two] = room.harvests()
    expect(one!.content.amount).toEqual({ value: 2, unit: 'L' })
    expect(one!.content.amount!.value).not.toBe(usual[0])
    expect(planLinks(one!)).toMatchObject([{ quantity: { value: 2, unit: 'L' }, origin: { madeAt } }])
    expect(two!.content.amount!.value).toBeLessThanOrEqual(room.two.volumeL / 2)
    expect(two!.content.amount!.value).toBeGreaterThan(room.two.volumeL / 2 - 0.5)
  })
})
