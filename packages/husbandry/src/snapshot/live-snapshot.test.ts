import { expect, test } from 'vitest'
import { SnapshotBuilder } from '../testing/snapshot-builder.ts'
import { answerOf, factList, nextSnapshot, openSnapshot } from './live-snapshot.ts'

const at = (minute: number) => new Date(Date.UTC(2026, 2, 10, 8, minute)).toISOString()

/** A room whose counts of one culture are asked for, and how often that was worked out. */
function room() {
  const built = new SnapshotBuilder()
  const [own, other] = [built.culture({ startedAt: at(0) }), built.culture({ startedAt: at(0) })]
  let times = 0
  const question = {}
  const ask = (snapshot: ReturnType<typeof openSnapshot>) =>
    answerOf(snapshot, { question, key: 'counts' }, () => {
      times += 1
      return factList(snapshot, `count ${own.id}`).length
    })
  return { built, own, other, ask, times: () => times }
}

test('an answer holds over many snapshots while nothing that it read changes, and not a moment longer', () => {
  const { built, own, other, ask, times } = room()
  let live = openSnapshot(built.build())
  for (let minute = 0; minute < 40; minute += 1) {
    built.count(other, at(minute), [100])
    live = nextSnapshot(live, built.build())
    if (minute % 13 === 0) expect(ask(live)).toBe(0)
  }
  expect(times()).toBe(1)
  built.count(own, at(50), [100])
  const counted = nextSnapshot(live, built.build())
  expect(ask(counted)).toBe(1)
  expect(times()).toBe(2)
  // Of the moment before it is what it was.
  expect(ask(live)).toBe(0)
})

test('two snapshots that came out of one each give their own answer', () => {
  const { built, own, other, ask } = room()
  const before = openSnapshot(built.build())
  expect(ask(before)).toBe(0)
  built.count(own, at(1), [100])
  const one = nextSnapshot(before, built.build())
  built.count(own, at(2), [100])
  const two = nextSnapshot(before, built.build())
  expect([ask(one), ask(two), ask(before), ask(one)]).toEqual([1, 2, 0, 1])
  built.count(other, at(3), [100])
  expect(ask(nextSnapshot(two, built.build()))).toBe(2)
})

test('a room of years begins its memory anew once it has read under thousands of names', () => {
  const { built, ask, times } = room()
  let live = openSnapshot(built.build())
  ask(live)
  for (let index = 0; index < 2600; index += 1) built.count(built.culture({ startedAt: at(0) }), at(1), [100])
  for (let turn = 0; turn < 3; turn += 1) {
    live = nextSnapshot(live, built.build())
    expect(ask(live)).toBe(0)
  }
  expect(times()).toBe(2)
})
