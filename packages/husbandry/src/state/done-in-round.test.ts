import { describe, expect, test } from 'vitest'
import { husbandryDay } from '../calendar/husbandry-day.ts'
import { roundsInOrder } from '../calendar/rounds.ts'
import { SnapshotBuilder } from '../testing/snapshot-builder.ts'
import { isDoneInRound } from './done-in-round.ts'
import { daysWeaned, takenWords } from './weaned.ts'

const date = '2026-03-10'

// Rounds at 07:00, 12:30 and 18:30.
test('a round’s feed is given where somebody wrote one down for it, or for a later one; a task’s own leaves it open', () => {
  const room = new SnapshotBuilder()
  const batch = room.batch({ hatchedOn: '2026-03-08' })
  const day = husbandryDay({ room: room.snapshot.room, date })
  const rounds = roundsInOrder(day)
  const midday = rounds.find(({ id }) => id === 'midday')!
  const isDone = (at: string, taskId: string | null = null) => {
    const facts = [room.fact('feeding', batch.id, `${at}:00.000Z`, { food: 'rotifers' }, { taskId })]
    return isDoneInRound(facts, { day, rounds, round: midday })
  }
  const task = room.nextId()
  expect(isDone(`${date}T12:40`)).toBe(true)
  expect(isDone(`${date}T12:40`, task)).toBe(false)
  // A missed feed is not made up for by doubling the next.
  expect([isDone(`${date}T18:40`), isDone(`${date}T18:40`, task)]).toEqual([true, true])
  expect([isDone(`${date}T07:10`), isDone(`${date}T07:10`, task)]).toEqual([false, false])
  expect([isDone('2026-03-09T12:40'), isDone('2026-03-11T12:40')]).toEqual([false, false])
  expect(isDoneInRound([], { day, rounds, round: midday })).toBe(false)
})

describe('how long a batch has been on dry food', () => {
  const days = (...said: [string, string][]) => {
    const room = new SnapshotBuilder()
    const batch = room.batch({ hatchedOn: '2026-02-20' })
    for (const [day, note] of said)
      room.fact('feeding', batch.id, `2026-03-${day}T08:00:00.000Z`, { food: 'dry', note })
    room.fact('feeding', batch.id, `${date}T09:00:00.000Z`, { food: 'rotifers', note: takenWords.none })
    return daysWeaned(room.build(), batch, husbandryDay({ room: room.snapshot.room, date }))
  }
  const { none, some, all } = takenWords
  test('counts from the first answer of all that no other came after', () => {
    expect(days(['04', none], ['06', all], ['08', all])).toBe(4)
    expect(days(['04', all], ['06', some], ['09', all])).toBe(1)
    expect(days(['10', all])).toBe(0)
  })
  test('is nothing while some do not take it, nobody said so, or only tomorrow will', () => {
    expect(days(['06', all], ['08', some])).toBeNull()
    expect(days(['06', all], ['08', none])).toBeNull()
    expect(days(['06', 'They look well.'])).toBeNull()
    expect(days(['11', all])).toBeNull()
    expect(days()).toBeNull()
  })
})
