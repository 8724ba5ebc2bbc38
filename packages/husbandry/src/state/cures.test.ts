import type { CureChange } from '@fryward/shared'
import { expect, test } from 'vitest'
import { addDays, husbandryDay } from '../calendar/husbandry-day.ts'
import { SnapshotBuilder } from '../testing/snapshot-builder.ts'
import { curesInForce, curesOf } from './cures.ts'

const chosenOn = '2026-03-10'
const chosenAt = `${chosenOn}T08:00:00.000Z`

function chosen(change: (room: SnapshotBuilder) => CureChange) {
  const room = new SnapshotBuilder()
  room.fact('cure', room.snapshot.room.id, chosenAt, { change: change(room), planMadeAt: chosenAt })
  const on = (date: string) => husbandryDay({ room: room.snapshot.room, date })
  return { room, isInForce: (days: number) => curesInForce(room.build(), on(addDays(chosenOn, days))).length === 1 }
}

test('what was chosen so that food lasts holds for the three weeks that its plan looked ahead', () => {
  const { room, isInForce } = chosen(() => ({ kind: 'thin_less' }))
  expect([-1, 0, 20, 21].map(isInForce)).toEqual([false, true, true, false])
  const day = husbandryDay({ room: room.snapshot.room, date: chosenOn })
  expect(curesOf(room.build(), 'thin_less', day)).toHaveLength(1)
  expect(curesOf(room.build(), 'use_backups', day)).toEqual([])
})

test('a culture to be started, or bought in, is waited for for a week after its date, or until one was begun so', () => {
  const onDate = '2026-03-14'
  const mother = '00000000-0000-7000-8000-0000000000aa'
  const start = (): CureChange => ({ kind: 'start_culture', cultureId: mother, volumeL: 10, animals: 6e5, onDate })
  const buy = (): CureChange => ({ kind: 'buy_in', animals: 5e6, onDate })
  for (const change of [start, buy]) {
    const { isInForce } = chosen(change)
    expect([0, 4, 10, 11].map(isInForce)).toEqual([true, true, true, false])
  }
  const begun = (change: () => CureChange, given: object) => {
    const { room, isInForce } = chosen(change)
    room.culture({ startedAt: '2026-03-12T08:00:00.000Z', parentCultureId: null, ...given })
    return !isInForce(3)
  }
  expect(begun(start, { parentCultureId: mother })).toBe(true)
  expect(begun(buy, {})).toBe(true)
  // Out of another, of another kind, or begun before it was chosen, it is none of it.
  expect([begun(start, {}), begun(buy, { parentCultureId: mother })]).toEqual([false, false])
  expect(begun(start, { parentCultureId: mother, kind: 'copepod' })).toBe(false)
  expect(begun(start, { parentCultureId: mother, startedAt: '2026-03-09T08:00:00.000Z' })).toBe(false)
})
