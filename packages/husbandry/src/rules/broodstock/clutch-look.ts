import type { CareKind, EggStage, PhotoLook, Phrase, TaskField } from '@fryward/shared'
import { eggStages } from '@fryward/shared'
import { firstRound } from '../../calendar/rounds.ts'
import { clutchLookDefinition } from '../../definitions/broodstock/clutch-look.ts'
import type { FactDraft } from '../../facts/fact.ts'
import { nightBefore } from '../../plans/morning-after.ts'
import { defineRule } from '../../rule/rule.ts'
import { clutchById } from '../../snapshot/by-id.ts'
import { isBrooder } from '../../species/index.ts'
import { type ClutchOutlook, clutchOutlook } from '../../state/clutch-outlook.ts'
import { clutchEggs, clutchState } from '../../state/clutch-state.ts'
import { factsOnDay } from '../../state/day-facts.ts'
import { choiceField, noteField, numberField } from '../../task/fields.ts'
import { likelihoodText, phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { choiceOf, numberOf, textOf } from '../../task/values.ts'
import { tonightLink } from './hatch-night.ts'

const stageLabels: Record<EggStage, string> = {
  orange: 'orange',
  dark: 'dark',
  eyed: 'dark with eyes',
  silver: 'silver eyes',
}

const stageChoices = eggStages.map((value) => ({ value, label: stageLabels[value] }))

/** The clutch's colour by eye; tells how far it is. */
export const eggStageField = choiceField({
  name: 'eggStage',
  label: 'Colour of what is left',
  choices: stageChoices,
})

const nestSteps: Phrase[] = [
  phrase('Colour of the clutch and of the eyes: orange, dark, dark with eyes, silver eyes.'),
  phrase('White or furred eggs are dead: write how many; the parents usually take them out.'),
  phrase('Is the male fanning? Is any of the clutch gone since yesterday?'),
]
// A male that carries eggs in his mouth does not eat; one that is pregnant does. common practice
const mouthSteps: Phrase[] = [
  phrase('Mouth still full, and no young in the water? Breathing and hiding as before?'),
  phrase('Do not chase the parent: a frightened one spits the brood.'),
]
const pouchSteps: Phrase[] = [
  phrase('Pouch still full, and no young in the water? Breathing, feeding, holding on as before?'),
  phrase('Do not chase or lift the parent: a frightened one may lose the brood.'),
]

const floatingSteps: Phrase[] = [
  phrase(
    'Clear eggs that float are alive; white ones, and those that sank, are dead: siphon them off and write how many.',
  ),
  phrase('Gentle air, no filter that draws them in.'),
]

// What somebody finds who comes too late for the colour: what hatched is asked next, in the same round.
const out = { value: 'out', label: 'larvae are out, or no eggs left' }

const colourField: TaskField = choiceField({
  name: 'eggStage',
  label: 'Colour',
  isRequired: true,
  choices: [...stageChoices, out],
})

const floatingField: TaskField = choiceField({
  name: 'eggs',
  label: 'The eggs are',
  isRequired: true,
  choices: [{ value: 'there', label: 'still there' }, out],
})

/** Of so many eggs; null when nobody has said. */
function deadField(eggs: number | null): TaskField {
  return numberField({
    name: 'dead',
    label: 'Dead or missing eggs since the last look',
    unit: 'eggs',
    minimum: 0,
    maximum: Math.max(1, eggs ?? 5000),
    likely: [0, Math.max(50, (eggs ?? 500) * 0.2)],
  })
}

const broodField: TaskField = choiceField({
  name: 'brood',
  label: 'Brood',
  isRequired: true,
  choices: [
    { value: 'carrying', label: 'still carrying' },
    { value: 'out', label: 'young are out, some or all' },
    { value: 'gone', label: 'not carrying any more' },
  ],
})

type Look = { thing: string; steps: Phrase[]; fields: (eggs: number | null) => TaskField[]; looks: PhotoLook[] }

const eggLooks = ['eggs_orange', 'eggs_dark', 'eggs_eyed', 'eggs_silver'] satisfies PhotoLook[]
const brood: Omit<Look, 'steps'> = { thing: 'the parent', fields: () => [broodField], looks: [] }

/** What is looked at, and what is asked of it. */
const lookOf: Record<CareKind, Look> = {
  nest: {
    thing: 'the eggs',
    steps: nestSteps,
    fields: (eggs) => [colourField, deadField(eggs)],
    looks: eggLooks,
  },
  mouth: { ...brood, steps: mouthSteps },
  pouch: { ...brood, steps: pouchSteps },
  pelagic: { thing: 'the eggs', steps: floatingSteps, fields: (eggs) => [floatingField, deadField(eggs)], looks: [] },
}

export const clutchLook = defineRule(clutchLookDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const clutch = clutchById(snapshot, subject.id)
    if (clutchState(snapshot, clutch) !== 'incubating') return []
    const outlook = clutchOutlook(snapshot, clutch, day)
    if (outlook.ageDays < 1) return []
    if (factsOnDay(snapshot, 'observation', { subjectId: clutch.id, day }).length > 0) return []
    // Collected today, they have been looked at.
    const isFoundToday = factsOnDay(snapshot, 'observation', { subjectId: clutch.pairId, day }).some(({ data }) =>
      data.signs.includes('eggs_seen'),
    )
    if (clutch.care === 'pelagic' && isFoundToday) return []
    // After a likely night the morning's question is what hatched; it asks for the colour too.
    if (nightBefore(snapshot, clutch, day)) return []
    const { thing, steps, fields, looks } = lookOf[clutch.care]
    return [
      {
        roundId: firstRound(day).id,
        content: taskContent({
          verb: 'look',
          title: titled('look_at', {
            thing,
            details: [{ kind: 'day', day: outlook.ageDays }],
          }),
          steps: [
            phrase(nightSentence(outlook, day.date, parameters.sayFromChance)),
            ...steps,
            ...(outlook.forecast.isOverdue
              ? [
                  phrase(
                    isBrooder(clutch.care)
                      ? 'It is late for its kind: look closely whether anything is carried still.'
                      : 'It is late for its kind: look closely whether the eggs are alive.',
                  ),
                ]
              : []),
          ],
          looks,
          fields: [...fields(clutchEggs(snapshot, clutch)), noteField()],
          because: [...outlook.because, tonightLink(outlook), parameter('sayFromChance', 'and')],
        }),
        context: {},
      },
    ]
  },
  record: ({ values, subjectId }) => {
    const eggStage = choiceOf(values, 'eggStage', eggStages)
    const brood = textOf(values, 'brood')
    const dead = Math.round(numberOf(values, 'dead') ?? 0)
    const note = [brood === 'gone' ? 'Not carrying any more.' : '', textOf(values, 'note') ?? ''].join(' ').trim()
    const isOut = [textOf(values, 'eggStage'), textOf(values, 'eggs'), brood].includes(out.value)
    const facts: FactDraft[] = [
      {
        kind: 'observation',
        subjectId,
        data: {
          signs: isOut ? ['larvae_out'] : brood === 'gone' ? ['no_eggs'] : ['eggs_seen'],
          ...(eggStage ? { eggStage } : {}),
          ...(note ? { note } : {}),
        },
      },
    ]
    if (dead > 0) facts.push({ kind: 'loss', subjectId, data: { number: dead, of: 'eggs' } })
    return { facts }
  },
})

/** "Tonight: likely (62 %)." or the likeliest night when it is not tonight. */
function nightSentence(outlook: ClutchOutlook, date: string, sayFromChance: number): string {
  const { likeliest, window80 } = outlook.forecast
  const event = isBrooder(outlook.species.care.value) ? 'release' : 'hatching'
  if (outlook.tonight >= sayFromChance) return `Tonight: ${event} ${likelihoodText(outlook.tonight)}.`
  if (likeliest.date <= date)
    return `Tonight: ${event} ${likelihoodText(outlook.tonight)}; it is past its likeliest night.`
  return `Likeliest night of ${event}: ${likeliest.date}, between ${window80.from} and ${window80.to}.`
}
