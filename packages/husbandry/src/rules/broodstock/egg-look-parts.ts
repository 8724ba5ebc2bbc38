import type { Because, CareKind, Instant, Phrase, PlainDate, TaskField } from '@fryward/shared'
import { z } from 'zod'
import { addHours } from '../../calendar/elapsed.ts'
import { addDays, noonOf } from '../../calendar/husbandry-day.ts'
import type { EggLook } from '../../plans/egg-look-plan.ts'
import type { Outcome } from '../../rule/rule.ts'
import { settingLink } from '../../rule/why.ts'
import { isBrooder } from '../../species/index.ts'
import { choiceField, numberField, yesNoField } from '../../task/fields.ts'
import { phrase } from '../../task/phrases.ts'
import { isYes, numberOf, textOf, type Values } from '../../task/values.ts'

/** How eggs are looked for, alone or with a feed. */
export function eggLookSteps({ pair, species, outlook }: EggLook): Phrase[] {
  const window = outlook?.forecast.window80
  return [
    phrase(lookAt(species.care.value, pair.nestSite)),
    ...(outlook && window
      ? [phrase(`Next spawning likeliest ${outlook.forecast.likeliest.date}, between ${window.from} and ${window.to}.`)]
      : []),
    phrase('No hands in the tank: a torch and a minute of watching do.'),
  ]
}

function lookAt(care: CareKind, nestSite: string): string {
  if (care === 'nest') return `Shine along the nest site${nestSite ? `: ${nestSite}` : ''}, and at what is near it.`
  if (care === 'mouth') return 'A full throat and a male that does not eat mean eggs in his mouth.'
  if (care === 'pouch') return 'A swollen, closed pouch means eggs.'
  // Common practice with fish that spawn at dusk into open water.
  return 'Shine along the surface and into the egg collector: eggs that are alive float and are clear as glass. Move them in a cup, in water, before a pump has them.'
}

export function eggLookFields({ species }: EggLook): TaskField[] {
  const size = species.clutchSize.value
  return [
    yesNoField({
      name: 'eggs',
      label: isBrooder(species.care.value) ? 'Carrying eggs?' : 'Eggs?',
      isRequired: true,
    }),
    choiceField({
      name: 'laid',
      label: 'Laid',
      help: 'Today when left empty.',
      choices: [
        { value: 'today', label: 'today' },
        { value: 'yesterday', label: 'yesterday' },
      ],
    }),
    numberField({
      name: 'number',
      label: 'About how many',
      unit: 'eggs',
      minimum: 1,
      maximum: 20_000,
      likely: [Math.max(1, size.from * 0.1), size.to * 2],
      step: size.to < 100 ? 1 : 10,
    }),
  ]
}

export function eggLookLinks({ pair, outlook }: EggLook): Because[] {
  if (outlook) return outlook.because
  return [settingLink(pair.id, 'clutches', { label: 'spawnings here so far', text: 'none' })]
}

/** When eggs found today were laid: spawning is by day, whenever somebody looks. */
export type LaidAt = { today: Instant; yesterday: Instant }
export const LaidAtSchema = z.object({ today: z.string(), yesterday: z.string() })

/**
 * Noon, for clownfish lay between 09:00 and 15:00 (09:00-13:00 in A. akallopisos: Dhaneesh et al. 2012; 09:00-11:00 in A.
 * perideraion: J. Fish. Soc. Taiwan 2008; 09:00-15:00 in A. clarkii: Moyer & Bell 1976). Stamped when they were seen,
 * eggs of one day would hatch a night later for having been found in the evening.
 */
export const laidAtNoon = (room: { timeZone: string }, date: PlainDate): LaidAt => ({
  today: noonOf(room, date),
  yesterday: noonOf(room, addDays(date, -1)),
})

/** What a look for eggs writes down; eggs found bring their clutch into being. */
export function eggLookOutcome(
  subjectId: string,
  given: { values: Values; doneAt: Instant; laidAt: LaidAt | null },
): Outcome {
  const { values, doneAt, laidAt } = given
  if (!isYes(values, 'eggs')) return { facts: [{ kind: 'observation', subjectId, data: { signs: ['no_eggs'] } }] }
  const laid = textOf(values, 'laid') === 'yesterday' ? 'yesterday' : 'today'
  const noon = laidAt?.[laid] ?? (laid === 'yesterday' ? addHours(doneAt, -24) : doneAt)
  // Found before noon they are there already.
  const spawnedAt = [noon, doneAt].sort()[0]!
  const eggs = numberOf(values, 'number')
  return {
    facts: [{ kind: 'observation', subjectId, data: { signs: ['eggs_seen'] } }],
    creations: [
      { kind: 'clutch', pairId: subjectId, spawnedAt, ...(eggs === undefined ? {} : { eggs: Math.round(eggs) }) },
    ],
  }
}
