import type { Phrase, TaskField } from '@fryward/shared'
import { rotiferRefillDefinition } from '../../definitions/live-food/rotifer-refill.ts'
import type { FactDraft } from '../../facts/fact.ts'
import { ruleInForce } from '../../rule/rule-in-force.ts'
import type { RoomSnapshot, SnapshotCulture } from '../../snapshot/room-snapshot.ts'
import { numberField } from '../../task/fields.ts'
import { degC, psu } from '../../task/measures.ts'
import { phrase } from '../../task/phrases.ts'

import { numberOf, type Values } from '../../task/values.ts'

/** True when a harvest of so many litres is filled up in the same standing. */
export function isFilledUp(snapshot: RoomSnapshot, takenL: number): boolean {
  const { isOn, parameters } = ruleInForce(snapshot, rotiferRefillDefinition)
  return isOn && takenL >= parameters.worthL
}

export function fillSteps(culture: SnapshotCulture): Phrase[] {
  return [
    phrase('Fill it up to the mark, slowly, with new water at {salinity} and {temperature}, measured.', {
      salinity: psu(culture.salinity),
      temperature: degC(culture.temperatureC),
    }),
  ]
}

export function filledField(culture: SnapshotCulture, plannedL: number): TaskField {
  return numberField({
    name: 'filledL',
    label: 'New water put in',
    help: 'Leave empty when it was as much as was taken; 0 when it waits.',
    unit: 'L',
    minimum: 0,
    maximum: culture.volumeL,
    likely: [0, Math.min(culture.volumeL, plannedL * 2)],
    usual: plannedL,
    step: 0.1,
  })
}

/** As much as was taken, unless something else was typed. */
export function fillFacts(subjectId: string, { values, takenL }: { values: Values; takenL: number }): FactDraft[] {
  const addedL = numberOf(values, 'filledL') ?? takenL
  return addedL > 0 ? [{ kind: 'water_change', subjectId, data: { removedL: 0, addedL } }] : []
}
