import { type CultureHealth, type CultureHealthInput, type CultureSign, cultureHealth } from '@fryward/live-feed'
import type { Sign, TaskField } from '@fryward/shared'
import type { FactDraft, FactOf } from '../../facts/fact.ts'
import { choiceField, choicesField } from '../../task/fields.ts'
import { choiceOf, choicesOf, type Values } from '../../task/values.ts'

const waterSigns = ['water_green', 'water_tinted', 'water_clear'] as const satisfies readonly Sign[]
const troubleSigns = [
  'swimming_slow',
  'sinking',
  'clumping',
  'foam',
  'bad_smell',
  'ciliates',
] as const satisfies readonly Sign[]

/** How the water looked before this feed; the next amounts follow it. */
export const waterField: TaskField = choiceField({
  name: 'water',
  label: 'Water before feeding',
  choices: [
    { value: 'water_green', label: 'still green' },
    { value: 'water_tinted', label: 'tinted' },
    { value: 'water_clear', label: 'clear' },
  ],
})

/** Signs that lead trouble by hours; ticked in seconds. */
export const signsField: TaskField = choicesField({
  name: 'signs',
  label: 'Anything off?',
  choices: [
    { value: 'swimming_slow', label: 'swimming slowly' },
    { value: 'sinking', label: 'sinking' },
    { value: 'clumping', label: 'clumping' },
    { value: 'foam', label: 'foam' },
    { value: 'bad_smell', label: 'bad smell' },
    { value: 'ciliates', label: 'ciliates' },
  ],
})

/** The observation that ticked signs and the look of the water mean; none when nothing was said. */
export function signFacts(subjectId: string, values: Values): FactDraft[] {
  const water = choiceOf(values, 'water', waterSigns)
  const signs: Sign[] = [...(water ? [water] : []), ...choicesOf(values, 'signs', troubleSigns)]
  return signs.length > 0 ? [{ kind: 'observation', subjectId, data: { signs } }] : []
}

const inScience: Partial<Record<Sign, CultureSign>> = {
  swimming_slow: 'swimming-slow',
  sinking: 'sinking',
  clumping: 'sinking',
  foam: 'foam',
  bad_smell: 'smell',
  ciliates: 'ciliates',
}

/** What the signs of these observations say of a culture, with its egg ratio and trend where they are known. */
export function healthFrom(
  observations: readonly FactOf<'observation'>[],
  known: Omit<CultureHealthInput, 'signs'> = {},
): CultureHealth {
  const signs = observations.flatMap(({ data }) => data.signs.flatMap((sign) => inScience[sign] ?? []))
  return cultureHealth({ ...known, signs: [...new Set(signs)] })
}

export type WaterLook = 'green' | 'tinted' | 'clear'
export function waterLookOf(fact: FactOf<'observation'>): WaterLook | null {
  const seen = fact.data.signs.find((sign) => sign.startsWith('water_'))
  return seen === 'water_green' ? 'green' : seen === 'water_tinted' ? 'tinted' : seen === 'water_clear' ? 'clear' : null
}
