import { type PlainDate, type Station, stationOfTank } from '@fryward/shared'
import { daysBetween, localDate } from '../calendar/husbandry-day.ts'
import type { Rule, Subject } from '../rule/rule.ts'
import { rememberedBySnapshot } from '../snapshot/remembered-by-snapshot.ts'
import type { RoomSnapshot } from '../snapshot/room-snapshot.ts'
import { livingBatches } from '../state/batch-state.ts'
import { clutchState } from '../state/clutch-state.ts'

/** The things a rule may be about, in order of name so that a day always reads the same. */
export function subjectsOf(
  snapshot: RoomSnapshot,
  rule: Pick<Rule, 'subject' | 'station'>,
  date: PlainDate,
): Subject[] {
  return remembered(snapshot, `${rule.subject} ${rule.station} ${date}`, () => workOut(snapshot, rule, date))
}

const remembered = rememberedBySnapshot<Subject[]>()

function workOut(snapshot: RoomSnapshot, rule: Pick<Rule, 'subject' | 'station'>, date: PlainDate): Subject[] {
  const named = listOf(snapshot, rule.subject, date)
  // What a tank needs is done with the animals that live in it, so that nobody walks back from the sick to the delicate.
  const stations = new Map<string, Station>(snapshot.tanks.map(({ id, kind }) => [id, stationOfTank[kind]]))
  return named
    .map(({ id, name }) => ({ id, name, kind: rule.subject, station: stations.get(id) ?? rule.station }))
    .sort((a, b) => a.name.localeCompare(b.name, 'en') || (a.id < b.id ? -1 : 1))
}

// Nothing is asked for about a clutch that has hatched, moved or been lost, once its larvae have settled too.
const clutchDays = 60

function listOf(snapshot: RoomSnapshot, kind: Rule['subject'], date: PlainDate): { id: string; name: string }[] {
  switch (kind) {
    case 'room':
      return [{ id: snapshot.room.id, name: snapshot.room.name }]
    case 'tank':
      return snapshot.tanks
    case 'culture':
      return snapshot.cultures
    case 'pair':
      return snapshot.pairs
    case 'clutch':
      return snapshot.clutches.filter((clutch) => {
        const state = clutchState(snapshot, clutch)
        const ageDays = daysBetween(localDate({ timeZone: snapshot.room.timeZone, at: clutch.spawnedAt }), date)
        return state === 'incubating' || (state !== 'void' && ageDays <= clutchDays)
      })
    case 'larval_batch':
      return livingBatches(snapshot)
    case 'juvenile_group':
      return snapshot.groups
  }
}
