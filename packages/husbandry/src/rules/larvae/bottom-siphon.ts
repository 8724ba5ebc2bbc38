import type { Phrase, TaskField } from '@fryward/shared'
import type { FactDraft } from '../../facts/fact.ts'
import type { LarvalLook } from '../../plans/larval-look-plan.ts'
import { noteField, numberField } from '../../task/fields.ts'
import { phrase } from '../../task/phrases.ts'
import { numberOf, textOf, type Values } from '../../task/values.ts'
import { lookFacts, lookFields, lookSteps } from './look-parts.ts'

/** How the bottom of a larval tank is siphoned, alone or as the first part of a water change; with the look, when due. */
export function siphonSteps(look: LarvalLook | null): Phrase[] {
  return [
    ...(look ? lookSteps(look) : []),
    phrase('Turn the air down, light at one end; siphon with a thin hose into a white bowl.'),
    phrase('Count the dead in the bowl; put back what swims.'),
    phrase('Bent backs, open gills or missing fins among them: say so.'),
  ]
}

export function siphonFields(look: LarvalLook | null): TaskField[] {
  return [
    ...(look ? lookFields() : []),
    numberField({
      name: 'dead',
      label: 'Dead larvae',
      isRequired: true,
      unit: 'animals',
      minimum: 0,
      maximum: 100_000,
      likely: [0, 100],
    }),
    numberField({
      name: 'deformed',
      label: 'Deformed among them',
      unit: 'animals',
      minimum: 0,
      maximum: 100_000,
      likely: [0, 20],
    }),
    noteField(),
  ]
}

export function siphonFacts(
  subjectId: string,
  given: { values: Values; look: { withLight: boolean } | null },
): FactDraft[] {
  const { values, look } = given
  const dead = Math.round(numberOf(values, 'dead') ?? 0)
  const deformed = Math.round(numberOf(values, 'deformed') ?? 0)
  const note = [deformed > 0 ? `${deformed} deformed.` : '', textOf(values, 'note') ?? ''].join(' ').trim()
  return [
    { kind: 'care', subjectId, data: { act: 'siphon_bottom', ...(note ? { note } : {}) } },
    ...(dead > 0 ? [{ kind: 'loss', subjectId, data: { number: dead, of: 'larvae' } } as const] : []),
    // The deformed and the note stand with the siphoning already.
    ...(look ? lookFacts(subjectId, { values: { seen: values.seen, settled: values.settled }, ...look }) : []),
  ]
}
