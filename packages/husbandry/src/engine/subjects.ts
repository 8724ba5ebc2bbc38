import { type Station, stationOfTank } from '@fryward/shared'
import type { Rule, Subject } from '../rule/rule.ts'
import { rememberedBySnapshot } from '../snapshot/remembered-by-snapshot.ts'
import type { RoomSnapshot } from '../snapshot/room-snapshot.ts'
import { isBatchStanding } from '../state/batch-state.ts'
import { clutchState } from '../state/clutch-state.ts'

/** The things a rule may be about, in order of name so that a day always reads the same. */
export function subjectsOf(snapshot: RoomSnapshot, rule: Pick<Rule, 'subject' | 'station'>): Subject[] {
  return remembered(snapshot, `${rule.subject} ${rule.station}`, () => workOut(snapshot, rule))
}

const remembered = rememberedBySnapshot<Subject[]>()

function workOut(snapshot: RoomSnapshot, rule: Pick<Rule, 'subject' | 'station'>): Subject[] {
  const named = listOf(snapshot, rule.subject)
  // What a tank needs is done with the animals that live in it, so that nobody walks back from the sick to the delicate.
  const stations = new Map<string, Station>(snapshot.tanks.map(({ id, kind }) => [id, stationOfTank[kind]]))
  return named
    .map(({ id, name }) => ({ id, name, kind: rule.subject, station: stations.get(id) ?? rule.station }))
    .sort((a, b) => a.name.localeCompare(b.name, 'en') || (a.id < b.id ? -1 : 1))
}

function listOf(snapshot: RoomSnapshot, kind: Rule['subject']): { id: string; name: string }[] {
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
      return snapshot.clutches.filter((clutch) => clutchState(snapshot, clutch) !== 'void')
    case 'larval_batch':
      return snapshot.batches.filter((batch) => isBatchStanding(snapshot, batch))
    case 'juvenile_group':
      return snapshot.groups
  }
}
