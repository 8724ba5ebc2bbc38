import { describe, expect, test } from 'vitest'
import { husbandryDay } from '../calendar/husbandry-day.ts'
import { SnapshotBuilder } from '../testing/snapshot-builder.ts'
import { harmfulWater, isTestDue, tankRetest } from './tank-water-plan.ts'

const date = '2026-03-10'
const at = (day: number, time = '08:00') => `2026-03-${String(day).padStart(2, '0')}T${time}:00.000Z`

/** A tank of 100 L in a room that acts at 0.02 mg/L of un-ionised ammonia and 1 mg/L of nitrite, and watches from 0.3 of it. */
function tankWater() {
  const room = new SnapshotBuilder()
  room.setting('tank-water-act', {
    parameters: { ammoniaMgPerL: 0.02, nitriteMgPerL: 1, watchNitriteMgPerL: 0.3, steadyDays: 3 },
  })
  const tank = room.tank({ kind: 'broodstock', volumeL: 100, temperatureC: 26, salinity: 35 })
  return {
    room,
    tank,
    read: (when: string, data: object) => room.fact('water_test', tank.id, when, { pH: 8.2, ...data }),
    changed: (when: string, litres: number) =>
      room.fact('water_change', tank.id, when, { removedL: litres, addedL: litres }),
    harmful: () => harmfulWater(room.build(), tank, husbandryDay({ room: room.snapshot.room, date })),
    retest: () => tankRetest(room.build(), { tank, day: husbandryDay({ room: room.snapshot.room, date }) }),
  }
}

describe('harmful water', () => {
  test('is nitrite or ammonia from the limit on, the worse of the two', () => {
    const { read, harmful } = tankWater()
    expect(harmful()).toBeNull()
    read(at(10), { nitriteNMgPerL: 0.99 })
    expect(harmful()).toBeNull()
    read(at(10, '09:00'), { nitriteNMgPerL: 1 })
    expect(harmful()).toMatchObject({ of: 'nitrite', mgPerL: 1, limitMgPerL: 1, change: undefined })
    // 1 mg/L of total ammonia nitrogen at pH 8.2, 26 C and 35 is some 0.06 mg/L un-ionised (Bower & Bidwell 1978): thrice the limit.
    read(at(10, '10:00'), { nitriteNMgPerL: 2, totalAmmoniaNMgPerL: 1 })
    expect(harmful()).toMatchObject({ of: 'ammonia', limitMgPerL: 0.02 })
    expect(harmful()!.mgPerL).toBeGreaterThan(0.05)
    expect(harmful()!.mgPerL).toBeLessThan(0.09)
    read(at(10, '11:00'), { nitriteNMgPerL: 9 })
    expect(harmful()?.of).toBe('nitrite')
  })

  test('is what is left of it where a change went with the test', () => {
    const { read, changed, harmful } = tankWater()
    read(at(10), { nitriteNMgPerL: 2 })
    changed(at(10), 40)
    expect(harmful()).toMatchObject({ mgPerL: expect.closeTo(1.2, 9), change: { kind: 'water_change' } })
    changed(at(10, '12:00'), 80)
    expect(harmful()?.mgPerL).toBeCloseTo(1.2, 9)
    const halved = tankWater()
    halved.read(at(10), { nitriteNMgPerL: 2 })
    halved.changed(at(10), 60)
    expect(halved.harmful()).toBeNull()
  })

  test('is nothing that a room acts upon where it switched that off', () => {
    const { room, read, harmful, retest } = tankWater()
    read(at(9), { nitriteNMgPerL: 5 })
    expect([harmful() !== null, retest() !== null]).toEqual([true, true])
    room.setting('tank-water-act', { isOn: false })
    expect([harmful(), retest()]).toEqual([null, null])
  })
})

describe('a test out of turn', () => {
  test('is in the round after the change that was made against what was read', () => {
    const { read, changed, retest } = tankWater()
    read(at(10, '07:10'), { nitriteNMgPerL: 2 })
    // Read today, and nothing done yet: the change comes first.
    expect(retest()).toBeNull()
    changed(at(10, '08:00'), 30)
    expect(retest()).toMatchObject({ round: { id: 'midday' }, change: { data: { removedL: 30 } } })
    // Water that was only added, or changed before, is no change against it.
    const added = tankWater()
    added.changed(at(10, '07:00'), 30)
    added.read(at(10, '07:10'), { nitriteNMgPerL: 2 })
    added.room.fact('water_change', added.tank.id, at(10, '08:00'), { removedL: 0, addedL: 3 })
    expect(added.retest()).toBeNull()
  })

  test('is the first thing of the day after one on which some was left, until it no longer rises', () => {
    const after = (...nitrite: number[]) => {
      const { read, retest } = tankWater()
      for (const [index, nitriteNMgPerL] of nitrite.entries()) read(at(10 - nitrite.length + index), { nitriteNMgPerL })
      return retest()?.round.id ?? null
    }
    expect([after(0.29), after(0.3), after(2)]).toEqual([null, 'morning', 'morning'])
    // Three days without a rise are steady; harmful water is watched all the same.
    expect([after(0.5, 0.5), after(0.5, 0.4, 0.5), after(0.4, 0.5, 0.5), after(0.5, 0.4, 0.6)]).toEqual([
      ...['morning', null, 'morning', 'morning'],
    ])
    expect(after(1.5, 1.2, 1.1)).toBe('morning')
    expect(after(0.2, 0.5, 0.5, 0.5)).toBeNull()
  })
})

test('the calendar asks for a test where none was made for so many days, or ever', () => {
  const { room, tank, read } = tankWater()
  room.setting('tank-water-test', { parameters: { everyDays: 7 } })
  const isDue = (on: string) => isTestDue(room.build(), tank, husbandryDay({ room: room.snapshot.room, date: on }))
  expect(isDue(date)).toBe(true)
  read(at(3), { nitriteNMgPerL: 0 })
  expect([isDue('2026-03-09'), isDue(date)]).toEqual([false, true])
  room.setting('tank-water-test', { isOn: false })
  expect(isDue(date)).toBe(false)
})
