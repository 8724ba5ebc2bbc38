import type { TaskField } from '@fryward/shared'
import { addMinutes } from '../../calendar/elapsed.ts'
import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import { firstRound } from '../../calendar/rounds.ts'
import type { FactDraft, FactOf } from '../../facts/fact.ts'
import type { RoomSnapshot, SnapshotCulture } from '../../snapshot/room-snapshot.ts'
import { factsUntil } from '../../state/day-facts.ts'
import { choiceField, noteField } from '../../task/fields.ts'
import { choiceOf, textOf, type Values } from '../../task/values.ts'
import { signFacts, signsField } from './culture-signs.ts'

/** Signs seen lately in a culture, back to the last look that found all well. */
export function signsSince(
  snapshot: RoomSnapshot,
  culture: SnapshotCulture,
  { day, hours }: { day: HusbandryDay; hours: number },
): FactOf<'observation'>[] {
  const from = addMinutes(firstRound(day).startsAt, -hours * 60)
  const looks = factsUntil(snapshot, 'observation', { subjectId: culture.id, until: day.endsAt })
  const isWell = (fact: FactOf<'observation'>) =>
    fact.data.signs.some((sign) => sign === 'swimming_well' || sign === 'all_well')
  const well = looks.findLast(isWell)
  return looks.filter((fact) => fact.at >= from && (!well || fact.at > well.at) && fact.data.signs.length > 0)
}

const did = [
  { value: 'nothing', label: 'nothing but looked' },
  { value: 'thinned', label: 'changed part of the water' },
  { value: 'restarted', label: 'restarted it elsewhere' },
] as const

export function troubleFields(): TaskField[] {
  return [
    signsField,
    choiceField({ name: 'did', label: 'Done about it', choices: [...did] }),
    noteField('What you saw and did'),
  ]
}

/** What the second look found: the signs ticked, or that they have passed; and what was done. */
export function troubleFacts(subjectId: string, values: Values): FactDraft[] {
  const action = did.find(({ value }) => value === choiceOf(values, 'did', ['nothing', 'thinned', 'restarted']))
  const note = [action?.label ?? '', textOf(values, 'note') ?? ''].filter(Boolean).join('; ')
  const ticked = signFacts(subjectId, values)
  // Looked at and nothing ticked: the signs have passed.
  const signs = ticked.flatMap((fact) => (fact.kind === 'observation' ? (fact.data.signs ?? []) : []))
  return [
    {
      kind: 'observation',
      subjectId,
      data: { signs: signs.length > 0 ? signs : ['swimming_well'], ...(note ? { note } : {}) },
    },
  ]
}
