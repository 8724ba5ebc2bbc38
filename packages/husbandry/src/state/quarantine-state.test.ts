import { describe, expect, test } from 'vitest'
import { husbandryDay } from '../calendar/husbandry-day.ts'
import { SnapshotBuilder } from '../testing/snapshot-builder.ts'
import { arrivalIn, lastSickness } from './quarantine-state.ts'

const date = '2026-03-10'
const at = (day: number, time = '08:00') => `2026-03-${String(day).padStart(2, '0')}T${time}:00.000Z`

function quarantine() {
  const room = new SnapshotBuilder()
  const tank = room.tank({ kind: 'quarantine', volumeL: 60 })
  const day = husbandryDay({ room: room.snapshot.room, date })
  return {
    room,
    tank,
    came: (on: number, number?: number) => room.fact('care', tank.id, at(on), { act: 'fish_arrived', number }),
    died: (on: number, number: number, time?: string) =>
      room.fact('loss', tank.id, at(on, time), { of: 'adults', number, cause: 'other' }),
    emptied: (on: number) => room.fact('care', tank.id, at(on), { act: 'quarantine_empty' }),
    arrivedOn: () => arrivalIn(room.build(), tank, day)?.at.slice(0, 10) ?? null,
    sickness: (since: string) => lastSickness(room.build(), tank, { since, day })?.at ?? null,
  }
}

describe('fish in quarantine', () => {
  test('stay from the last that came, until it is said to be empty', () => {
    const { came, emptied, arrivedOn } = quarantine()
    expect(arrivedOn()).toBeNull()
    came(1, 2)
    came(4, 1)
    expect(arrivedOn()).toBe('2026-03-04')
    emptied(6)
    expect(arrivedOn()).toBeNull()
    came(8)
    expect(arrivedOn()).toBe('2026-03-08')
    came(11)
    expect(arrivedOn()).toBe('2026-03-08')
  })

  test('are gone once as many have died as came, of all that share the tank', () => {
    const { came, died, arrivedOn } = quarantine()
    came(2, 2)
    came(4, 1)
    // Of those that were there before.
    died(1, 5)
    died(5, 2)
    expect(arrivedOn()).toBe('2026-03-04')
    died(6, 1)
    expect(arrivedOn()).toBeNull()
  })

  test('of which nobody wrote how many are there until somebody looks', () => {
    const { came, died, emptied, arrivedOn } = quarantine()
    came(2)
    died(5, 40)
    expect(arrivedOn()).toBe('2026-03-02')
    emptied(6)
    expect(arrivedOn()).toBeNull()
  })

  test('are sick by a look, a treatment or a death since they came, the last of them', () => {
    const { room, tank, died, sickness } = quarantine()
    expect(sickness(at(2))).toBeNull()
    const look = (on: number, sign: string) => room.fact('observation', tank.id, at(on), { signs: [sign] as never })
    look(4, 'all_well')
    expect(sickness(at(2))).toBeNull()
    look(3, 'spots_or_wounds')
    expect(sickness(at(2))).toBe(at(3))
    expect(sickness(at(3))).toBeNull()
    look(5, 'gasping')
    died(6, 1)
    expect(sickness(at(2))).toBe(at(6))
    look(7, 'not_eating')
    expect(sickness(at(2))).toBe(at(7))
    room.fact('treatment', tank.id, at(8), { product: 'A bath', dose: 'as written', prescribedBy: 'the vet' })
    expect(sickness(at(2))).toBe(at(8))
    look(11, 'gasping')
    expect(sickness(at(2))).toBe(at(8))
  })
})
