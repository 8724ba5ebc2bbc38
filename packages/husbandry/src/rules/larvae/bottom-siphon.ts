import type { FieldProblem, Phrase, TaskField } from '@fryward/shared'
import type { FactDraft } from '../../facts/fact.ts'
import type { LarvalLook } from '../../plans/larval-look-plan.ts'
import { deformedField, noteField, numberField, seenOfYoung } from '../../task/fields.ts'
import { phrase } from '../../task/phrases.ts'
import { given, numberOf, textOf, type Values } from '../../task/values.ts'
import type { YoungWords } from '../../task/young.ts'
import { lookFacts, lookFields, lookSteps } from './look-parts.ts'

/** How the bottom of a larval tank is siphoned, alone or as the first part of a water change; with the look, when due. */
export function siphonSteps(look: LarvalLook | null, young: YoungWords): Phrase[] {
  return [
    ...(look ? lookSteps(look, young) : []),
    phrase('Turn the air down, light at one end; siphon with a thin hose into a white bowl.'),
    phrase('Count the dead in the bowl; put back what swims.'),
    phrase(`Deformed among the dead: count them too. ${young.deformed}`),
  ]
}

export function siphonFields(look: LarvalLook | null, young: YoungWords): TaskField[] {
  return [
    ...(look ? lookFields(young) : []),
    numberField({
      name: 'dead',
      label: young.dead,
      isRequired: true,
      unit: 'animals',
      minimum: 0,
      maximum: 100_000,
      likely: [0, 100],
    }),
    deformedField(young.deformed),
    noteField(),
  ]
}

/** The deformed are some of the dead in the bowl. */
export function siphonCheck(values: Values): FieldProblem[] {
  const [dead, deformed] = [numberOf(values, 'dead') ?? 0, numberOf(values, 'deformed') ?? 0]
  if (deformed <= dead) return []
  return [{ path: 'values.deformed', message: `More deformed than dead: ${dead} were dead. Count both in the bowl.` }]
}

export function siphonFacts(
  subjectId: string,
  asked: { values: Values; look: { withLight: boolean } | null },
): FactDraft[] {
  const { values, look } = asked
  const dead = Math.round(numberOf(values, 'dead') ?? 0)
  const { deformed } = seenOfYoung(values)
  const note = textOf(values, 'note')
  return [
    { kind: 'care', subjectId, data: { act: 'siphon_bottom', ...(note ? { note } : {}) } },
    ...(dead > 0
      ? [{ kind: 'loss', subjectId, data: { number: dead, of: 'larvae', ...given({ deformed }) } } as const]
      : []),
    // The dead and the note stand with the siphoning already.
    ...(look ? lookFacts(subjectId, { values: { seen: values.seen, settled: values.settled }, ...look }) : []),
  ]
}
