import { describe, expect, test } from 'vitest'
import { husbandryDay } from '../calendar/husbandry-day.ts'
import { SnapshotBuilder } from '../testing/snapshot-builder.ts'
import { factsOnDay, factsOnDayBefore, factsUntil } from './day-facts.ts'

// Clocks in Lisbon go forward at one in the night of 29 March 2026 (EU Directive 2000/84/EC, article 2): that day has 23 hours.
const at = {
  lastOf28th: '2026-03-28T23:59:59.999Z',
  firstOf29th: '2026-03-29T00:00:00.000Z',
  lastOf29th: '2026-03-29T22:59:59.999Z',
  firstOf30th: '2026-03-29T23:00:00.000Z',
  lastOf30th: '2026-03-30T22:59:59.999Z',
  firstOf31st: '2026-03-30T23:00:00.000Z',
}
const room = new SnapshotBuilder({ timeZone: 'Europe/Lisbon' })
const { id: subjectId } = room.culture({ startedAt: '2026-03-01T08:00:00.000Z' })
for (const instant of Object.values(at)) room.fact('observation', subjectId, instant, { signs: ['all_well'] })
const { snapshot } = room
const about = { subjectId, day: husbandryDay({ room: snapshot.room, date: '2026-03-30' }) }
const instants = (facts: { at: string }[]) => facts.map((fact) => fact.at)

describe('the facts of 30 March', () => {
  test('begin with the first instant of the local day and end with its last', () => {
    expect(instants(factsOnDay(snapshot, 'observation', about))).toEqual([at.firstOf30th, at.lastOf30th])
  })

  test('those of the day before are those of its 23 hours', () => {
    expect(instants(factsOnDayBefore(snapshot, 'observation', about))).toEqual([at.firstOf29th, at.lastOf29th])
  })

  test('those until an instant leave out what is of that instant itself', () => {
    const until = { subjectId, until: at.firstOf30th }
    expect(instants(factsUntil(snapshot, 'observation', until))).toEqual([at.lastOf28th, at.firstOf29th, at.lastOf29th])
    expect(factsUntil(snapshot, 'observation', { subjectId, until: at.lastOf28th })).toEqual([])
  })

  test('of another kind there are none', () => {
    expect(factsOnDay(snapshot, 'count', about)).toEqual([])
  })
})
