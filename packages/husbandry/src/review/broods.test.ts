import { expect, test } from 'vitest'
import { BroodRoom } from '../testing/brood-room.ts'
import { broodsOf } from './broods.ts'

const told = (room: BroodRoom) =>
  broodsOf(room.review(100)).map(({ id, clutches, vessels }) => ({
    id,
    clutches: clutches.map((clutch) => clutch.id),
    vessels: vessels.map((vessel) => [vessel.id, vessel.mixedAt]),
  }))

test('clutches stand by the hour in which they were laid, those of one hour as they were written', () => {
  const room = new BroodRoom()
  const [late, one, other] = [room.clutch(5), room.clutch(0), room.clutch(0)]
  expect(told(room).map(({ id }) => id)).toEqual([one.id, other.id, late.id])
})

test('clutches that share tanks one after the other are one brood, by the oldest of them', () => {
  const room = new BroodRoom()
  const [a, b, c] = [room.clutch(0), room.clutch(1), room.clutch(2)]
  // The young ones meet first, in a tank of their own.
  const tanks = [room.batch(9, [c, b], 60), room.batch(10, [b, a], 50)]
  expect(told(room)).toEqual([{ id: a.id, clutches: [a.id, b.id, c.id], vessels: tanks.map(({ id }) => [id, null]) }])
})

test('whichever of them hatched first, and whoever else laid before them', () => {
  const room = new BroodRoom()
  const [alone, older, younger] = [room.clutch(0), room.clutch(1), room.clutch(2)]
  room.batch(9, [older, younger], 60)
  expect(told(room).map(({ id }) => id)).toEqual([alone.id, older.id])
  const other = new BroodRoom()
  const [first, second, third] = [other.clutch(0), other.clutch(1), other.clutch(2)]
  other.batch(9, [third, second], 60)
  expect(told(other).map(({ id }) => id)).toEqual([first.id, second.id])
})

test('bought-in fish are others once somebody counted them, and fish of the batch itself never are', () => {
  const settled = (countedOn: number, isOwn: boolean) => {
    const room = new BroodRoom()
    const batch = room.batch(8, [room.clutch(0)], 60)
    const group = room.group(20, isOwn ? batch : null)
    room.builder.fact('observation', group.id, room.at(28), { signs: ['all_well'] })
    room.count(countedOn, group, 'juveniles', 30)
    room.move(30, batch, group, 30)
    return told(room)[0]!.vessels.some(([id]) => id === group.id)
  }
  expect([settled(29, false), settled(31, false), settled(29, true)]).toEqual([false, true, true])
})

test('two broods that meet are lost from then on, and so is what leaves the tank that they met in', () => {
  const room = new BroodRoom()
  const [a, b] = [room.batch(8, [room.clutch(0)], 60), room.batch(9, [room.clutch(1)], 50)]
  const [shared, next, own] = [room.group(30, a), room.group(50, a), room.group(50, b)]
  room.move(30, a, shared, 50)
  room.move(40, b, shared, 10)
  room.move(45, b, shared, 10)
  room.move(50, shared, next, 20)
  room.move(50, b, own, 20)
  expect(told(room).map(({ vessels }) => vessels)).toEqual([
    [
      [a.id, null],
      [shared.id, room.at(40, '11:00')],
    ],
    [
      [b.id, null],
      [own.id, null],
    ],
  ])
})
