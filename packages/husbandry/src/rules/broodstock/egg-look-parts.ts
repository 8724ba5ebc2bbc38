import {
  type Because,
  type CareKind,
  clutchIntents,
  type Instant,
  type Phrase,
  type PlainDate,
  type TaskField,
} from '@fryward/shared'
import { z } from 'zod'
import { addHours } from '../../calendar/elapsed.ts'
import { addDays, noonOf } from '../../calendar/husbandry-day.ts'
import type { FactDraft } from '../../facts/fact.ts'
import type { EggLook } from '../../plans/egg-look-plan.ts'
import type { Outcome } from '../../rule/rule.ts'
import { settingLink } from '../../rule/why.ts'
import type { SnapshotTank } from '../../snapshot/room-snapshot.ts'
import { isBrooder } from '../../species/index.ts'
import { choiceField, numberField, yesNoField } from '../../task/fields.ts'
import { phrase } from '../../task/phrases.ts'
import { choiceOf, isYes, numberOf, textOf, type Values } from '../../task/values.ts'

/** How eggs are looked for, alone or with a feed. */
export function eggLookSteps({ pair, species, outlook, tank }: EggLook): Phrase[] {
  if (species.care.value === 'pelagic') return collectingSteps(tank)
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
  return 'A swollen, closed pouch means eggs.'
}

// Common practice with fish that spawn at dusk into open water.
const collectingSteps = (tank: SnapshotTank | null): Phrase[] => [
  phrase('Shine along the surface and into the egg collector: eggs that are alive float and are clear as glass.'),
  phrase(
    `Take them in a cup, in water, before a pump has them: they go into ${tank?.name ?? 'an empty larval tank'}, which the list says how to ready once they are found.`,
  ),
  phrase('One evening’s eggs to a tank. Those that nobody has a tank for stay where they are: there will be others.'),
]

export function eggLookFields({ species }: EggLook): TaskField[] {
  const size = species.clutchSize.value
  const isFloating = species.care.value === 'pelagic'
  return [
    yesNoField({
      name: 'eggs',
      label: isBrooder(species.care.value) ? 'Carrying eggs?' : 'Eggs?',
      isRequired: true,
    }),
    choiceField({
      name: 'laid',
      label: 'Laid',
      help: isFloating ? 'At the last dusk when left empty.' : 'Today when left empty.',
      choices: [
        { value: 'today', label: isFloating ? 'this evening' : 'today' },
        { value: 'yesterday', label: isFloating ? 'last evening' : 'yesterday' },
      ],
    }),
    ...(isFloating ? [collectedField] : []),
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

const collectedField = choiceField({
  name: 'intent',
  label: 'Collected',
  help: 'All of them when left empty.',
  choices: [
    { value: 'raise_all', label: 'all of them, to be raised' },
    { value: 'raise_part', label: 'a part of them' },
    { value: 'leave_with_parents', label: 'none: left where they are' },
  ],
})

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
  given: { values: Values; doneAt: Instant; laidAt: LaidAt | null; isFloating?: boolean },
): Outcome {
  const { values, doneAt, laidAt, isFloating = false } = given
  if (!isYes(values, 'eggs')) return { facts: [{ kind: 'observation', subjectId, data: { signs: ['no_eggs'] } }] }
  const intent = choiceOf(values, 'intent', clutchIntents)
  const found: FactDraft = { kind: 'observation', subjectId, data: { signs: ['eggs_seen'] } }
  // Floating eggs that nobody takes are eaten or drawn in by the morning: there is no clutch to follow.
  if (intent === 'leave_with_parents') return { facts: [found] }
  // What is laid at dusk was laid at the last one: today’s is still to come.
  const isToday = textOf(values, 'laid') !== 'yesterday' && !(isFloating && laidAt && laidAt.today > doneAt)
  const laid = isToday ? 'today' : 'yesterday'
  const noon = laidAt?.[laid] ?? (laid === 'yesterday' ? addHours(doneAt, -24) : doneAt)
  // Found before noon they are there already.
  const spawnedAt = [noon, doneAt].sort()[0]!
  const eggs = numberOf(values, 'number')
  return {
    facts: [found],
    creations: [
      {
        kind: 'clutch',
        pairId: subjectId,
        spawnedAt,
        ...(eggs === undefined ? {} : { eggs: Math.round(eggs) }),
        ...(isFloating ? { intent: intent ?? 'raise_all' } : {}),
      },
    ],
  }
}
