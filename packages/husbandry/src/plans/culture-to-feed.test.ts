import { expect, test } from 'vitest'
import { husbandryDay } from '../calendar/husbandry-day.ts'
import { SnapshotBuilder } from '../testing/snapshot-builder.ts'
import { culturesToFeed } from './culture-to-feed.ts'

const date = '2026-03-10'

/** Two cultures of 18 L, the first a little denser. */
function twoCultures() {
  const room = new SnapshotBuilder()
  const [R1, R2] = ['R1', 'R2'].map((name) => room.culture({ name, startedAt: '2026-02-20T08:00:00.000Z' }))
  room.count(R1!, `${date}T06:30:00.000Z`, [260, 260, 260])
  room.count(R2!, `${date}T06:30:00.000Z`, [240, 240, 240])
  const best = () => {
    const snapshot = room.build()
    return culturesToFeed(snapshot, husbandryDay({ room: snapshot.room, date })).map(({ name }) => name)
  }
  return { room, R1: R1!, best }
}

test('larvae just hatched are fed from the culture that has most for them', () => {
  expect(twoCultures().best()).toEqual(['R1', 'R2'])
})

test('not from one that others eat from, where another has nearly as much', () => {
  const { room, R1, best } = twoCultures()
  room.feedLink(room.batch({ hatchedOn: '2026-03-07' }), R1)
  expect(best()).toEqual(['R2', 'R1'])
})

test('nor from one that has been thinned for others today already', () => {
  const { room, R1, best } = twoCultures()
  const parts = [{ to: 'other_fish' as const, volumeL: 8 }]
  room.fact('harvest', R1.id, `${date}T06:30:00.000Z`, { volumeL: 8, parts })
  expect(best()).toEqual(['R2', 'R1'])
})
