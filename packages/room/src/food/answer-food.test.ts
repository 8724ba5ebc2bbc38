import { foodAhead } from '@fryward/husbandry'
import type { CureChange } from '@fryward/shared'
import { expect, test } from 'vitest'
import { SnapshotBuilder } from '../../../husbandry/src/testing/snapshot-builder.ts'
import { steadyCulture } from '../../../husbandry/src/testing/steady-culture.ts'
import { answerFood, type FoodJob } from './answer-food.ts'
import { ordersOf } from './food-orders.ts'

const today = '2026-03-10'

/** A litre of culture for a batch in 40 L, and two litres of 240 per mL that were chilled a week ago. */
function hungryRoom(chosen: CureChange[] = []): FoodJob {
  const room = new SnapshotBuilder()
  const culture = steadyCulture(room, { date: today, volumeL: 1 })
  const other = room.culture({ name: 'R9', startedAt: '2026-02-01T08:00:00.000Z', isBackup: false })
  room.count(other, '2026-03-03T06:30:00.000Z', [240, 240, 240])
  const parts = [{ to: 'chilled_reserve' as const, volumeL: 2 }]
  room.fact('harvest', other.id, '2026-03-03T08:00:00.000Z', { volumeL: 2, parts })
  room.fact('observation', other.id, '2026-03-10T06:45:00.000Z', { signs: ['bad_smell'] })
  room.feedLink(room.batch({ hatchedOn: '2026-03-08', larvae: 300 }), culture)
  for (const change of chosen)
    room.fact('cure', room.snapshot.room.id, '2026-03-10T06:00:00.000Z', {
      change,
      planMadeAt: '2026-03-10T05:00:00.000Z',
    })
  const asked = { horizon: { today, days: 7, futures: 40 }, record: { crashes: 0, cultureDays: 0, lived: [] } }
  return { snapshot: room.build(), asked }
}

test('the chilled reserve is offered where food is short, and given only once the room has said so', async () => {
  const before = await answerFood(hungryRoom())
  expect(before.cures.map(({ change }) => change.kind)).toContain('use_reserve')
  expect(before.outlook.days.flatMap(({ gives }) => gives.map(({ cultureId }) => cultureId))).not.toContain('chilled')
  expect(ordersOf(before.outlook)[0]?.batches[0]?.chilled).toBeUndefined()

  const job = hungryRoom([{ kind: 'use_reserve' }])
  const after = await answerFood(job)
  expect(after.cures.map(({ change }) => change.kind)).not.toContain('use_reserve')
  expect(after.outlook.shortTotal).toBeLessThan(before.outlook.shortTotal)
  const [order] = ordersOf(after.outlook)[0]!.batches
  const [day] = after.outlook.days
  const gives = day!.gives.filter(({ cultureId }) => cultureId === 'chilled')
  expect(order?.chilled).toBe(gives[0]?.animals)
  expect(order?.chilled).toBeGreaterThan(0)
  // Out of the vessels the list still asks for their own part alone.
  const eater = day!.eaters[0]!
  expect(order?.share).toBeCloseTo((eater.got - gives[0]!.animals) / eater.wanted, 1)
  // Over the days no more is taken than lives in it.
  const alive = foodAhead(job.snapshot, { ...job.asked, changes: [] }).cultures.find(({ id }) => id === 'chilled')!
  const taken = after.outlook.days.flatMap((each) => each.gives.filter(({ cultureId }) => cultureId === 'chilled'))
  expect(taken.reduce((sum, { animals }) => sum + animals, 0)).toBeLessThanOrEqual(alive.animals)
})
