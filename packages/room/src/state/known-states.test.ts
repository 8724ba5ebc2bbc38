import type { Database } from '@fryward/store'
import { expect, test } from 'vitest'
import { keepState, knownState } from './known-states.ts'
import type { RoomState } from './room-state.ts'

const state = (roomId: string, revision: number) => ({ roomId, revision }) as RoomState

test('of a room the newest that was committed is known, in whatever order commits are heard of', () => {
  const [database, other] = [{} as Database, {} as Database]
  expect(knownState(database, 'a')).toBeUndefined()
  for (const revision of [3, 5, 4]) keepState(database, state('a', revision))
  expect(knownState(database, 'a')?.revision).toBe(5)
  // The same revision again is that of a later day.
  const later = state('a', 5)
  keepState(database, later)
  expect(knownState(database, 'a')).toBe(later)
  expect([knownState(database, 'b'), knownState(other, 'a')]).toEqual([undefined, undefined])
})

test('so many rooms are known at once as fit into a gigabyte, twenty to thirty megabytes each', () => {
  const database = {} as Database
  const rooms = Array.from({ length: 100 }, (_, index) => `room ${index}`)
  for (const room of rooms) keepState(database, state(room, 1))
  const known = rooms.filter((room) => knownState(database, room))
  expect(known).toEqual(rooms.slice(-40))
})
