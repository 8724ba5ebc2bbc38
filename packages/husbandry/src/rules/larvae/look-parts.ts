import type { Because, Phrase, Sign, TaskField } from '@fryward/shared'
import type { FactDraft } from '../../facts/fact.ts'
import type { LarvalLook } from '../../plans/larval-look-plan.ts'
import { factLink } from '../../rule/why.ts'
import type { TankLight } from '../../state/tank-light.ts'
import { choiceField, deformedField, noteField, seenOfYoung } from '../../task/fields.ts'
import { hours } from '../../task/measures.ts'
import { phrase } from '../../task/phrases.ts'
import { given, textOf, type Values } from '../../task/values.ts'
import type { YoungWords } from '../../task/young.ts'

/** The light over larvae: how bright, and how long by their tank. */
export function lightSteps({ hours: lit, onAt, offAt }: TankLight): Phrase[] {
  return [
    phrase('{from} to {to} at the surface; a little less on the first day.', {
      from: { value: 1000, unit: 'lux' },
      to: { value: 2000, unit: 'lux' },
    }),
    phrase(`{hours} of light, from ${onAt} to ${offAt}, dark after that; no glare on one wall.`, {
      hours: hours(Number(lit.toFixed(1))),
    }),
    phrase('Where the lamp keeps other hours, set its timer, or write its hours of light on the tank’s page.'),
  ]
}

/** How a batch is looked at, alone or while its bottom is siphoned. */
export function lookSteps({ withLight, light }: LarvalLook, { look }: YoungWords): Phrase[] {
  return [...look.map((step) => phrase(step)), ...(withLight ? weeklyLightSteps(light) : [])]
}

/** Among other steps they say themselves what they are of: what is done after them is not of the light. */
const weeklyLightSteps = (light: TankLight): Phrase[] =>
  lightSteps(light).map((step, index) => (index === 0 ? { ...step, text: `The light, weekly: ${step.text}` } : step))

/** How they are, and how many have settled: what no siphoning asks. */
export function lookFields({ settle }: YoungWords): TaskField[] {
  return [
    choiceField({
      name: 'seen',
      label: 'They are',
      isRequired: true,
      choices: [
        { value: 'well', label: 'well' },
        { value: 'hungry', label: 'hungry or thin' },
        { value: 'poorly', label: 'poorly' },
      ],
    }),
    ...(settle ? [settledField] : []),
  ]
}

const settledField = choiceField({
  name: 'settled',
  label: 'Barred and settled',
  choices: [
    { value: 'none', label: 'none' },
    { value: 'some', label: 'some' },
    { value: 'most', label: 'most' },
  ],
})

/** What a look of its own asks besides; a siphoning asks both itself. */
export function deformedFields({ deformed }: YoungWords): TaskField[] {
  return [deformedField(deformed, 'Deformed ones seen'), noteField()]
}

export function lookLinks({ last }: LarvalLook): Because[] {
  return last ? [factLink(last, { label: 'last looked at', joins: 'and' })] : []
}

/** The look as it is written down, with the light when that was due. */
export function lookFacts(subjectId: string, asked: { values: Values; withLight: boolean }): FactDraft[] {
  const { values, withLight } = asked
  const seen = textOf(values, 'seen')
  const settled = textOf(values, 'settled')
  const { deformed } = seenOfYoung(values)
  const note = [
    seen === 'hungry' ? 'Hungry or thin.' : seen === 'poorly' ? 'Poorly.' : '',
    settled === 'some' ? 'Some barred and settled.' : '',
    textOf(values, 'note') ?? '',
  ]
    .filter(Boolean)
    .join(' ')
  const signs: Sign[] = seen === 'well' ? ['all_well'] : seen === 'hungry' ? ['not_eating'] : []
  if (settled === 'most') signs.push('settled')
  return [
    {
      kind: 'observation',
      subjectId,
      data: { signs, note: note || (signs.length > 0 ? '' : 'Looked at.'), ...given({ deformed }) },
    },
    ...(withLight ? [{ kind: 'care', subjectId, data: { act: 'check_light' } } as const] : []),
  ]
}
