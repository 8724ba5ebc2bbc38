import { expect, test } from 'vitest'
import { SnapshotBuilder } from '../testing/snapshot-builder.ts'
import { fishIn, growOutFor, roomForFish } from './grow-out-room.ts'

test('a grow-out tank takes a fish for each litre, less those of all groups in it', () => {
  const room = new SnapshotBuilder()
  room.setting('juvenile-count', { parameters: { fishPerL: 1 } })
  const tank = room.tank({ kind: 'grow_out', volumeL: 100.9 })
  expect([fishIn(room.build(), tank), roomForFish(room.build(), tank)]).toEqual([0, 100])
  room.group({ settledOn: '2026-03-01', tankId: tank.id, number: 30 })
  room.group({ settledOn: '2026-03-01', tankId: tank.id, number: 25 })
  room.group({ settledOn: '2026-03-01', number: 40 })
  // Nobody has said how many these are.
  room.group({ settledOn: '2026-03-01', tankId: tank.id })
  expect([fishIn(room.build(), tank), roomForFish(room.build(), tank)]).toEqual([55, 45])
  room.group({ settledOn: '2026-03-01', tankId: tank.id, number: 60 })
  expect(roomForFish(room.build(), tank)).toBe(0)
})

test('young go where all of them have room: into a filtered tank before a bare one, the smallest that will do', () => {
  const room = new SnapshotBuilder()
  room.setting('juvenile-count', { parameters: { fishPerL: 1 } })
  const tank = (name: string, volumeL: number, hasFilter: boolean) =>
    room.tank({ name, kind: 'grow_out', volumeL, hasFilter })
  tank('small', 40, true)
  tank('bare', 60, false)
  tank('large', 200, true)
  tank('middling', 100, true)
  room.tank({ kind: 'larval', volumeL: 500, hasFilter: true })
  const names = (number: number | null) => growOutFor(room.build(), number).map((place) => place.tank.name)
  expect(names(50)).toEqual(['middling', 'large', 'bare', 'small'])
  expect(names(100)[0]).toBe('middling')
  expect(names(101)[0]).toBe('large')
  expect(names(40)[0]).toBe('small')
  // None takes all, or nobody knows how many: the roomiest first, to be split between.
  expect(names(201)).toEqual(['large', 'middling', 'bare', 'small'])
  expect(names(null)).toEqual(['large', 'middling', 'bare', 'small'])
  room.snapshot.tanks = room.snapshot.tanks.filter(({ hasFilter }) => !hasFilter)
  expect(names(50)).toEqual(['bare'])
})
