import { eggStages, type Phrase, type TaskField } from '@fryward/shared'
import { z } from 'zod'
import { firstRound } from '../../calendar/rounds.ts'
import { clutchMorningAfterDefinition } from '../../definitions/broodstock/clutch-morning-after.ts'
import type { FactDraft } from '../../facts/fact.ts'
import { nightBefore } from '../../plans/morning-after.ts'
import { defineRule } from '../../rule/rule.ts'
import { clutchById } from '../../snapshot/by-id.ts'
import type { SnapshotTank } from '../../snapshot/room-snapshot.ts'
import { clutchEggs, clutchIntent, clutchState } from '../../state/clutch-state.ts'
import { factsOnDay } from '../../state/day-facts.ts'
import { choiceField, noteField, numberField } from '../../task/fields.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { choiceOf, numberOf, textOf, type Values } from '../../task/values.ts'
import { eggStageField } from './clutch-look.ts'
import { chanceLinks, freeLarvalTanks } from './hatch-night.ts'

const MorningContextSchema = z.object({
  hatchedOn: z.string(),
  tankId: z.string().nullable(),
  species: z.string(),
  raises: z.boolean(),
})

export const clutchMorningAfter = defineRule(clutchMorningAfterDefinition, {
  draft: ({ snapshot, day, subject, parameter }) => {
    const clutch = clutchById(snapshot, subject.id)
    if (clutchState(snapshot, clutch) !== 'incubating') return []
    const night = nightBefore(snapshot, clutch, day)
    if (!night) return []
    const { hatchedOn, outlook } = night
    const seenToday = factsOnDay(snapshot, 'observation', { subjectId: clutch.id, day }).some(
      ({ data }) => data.signs.includes('eggs_seen') || data.eggStage !== undefined,
    )
    if (seenToday) return []
    const raises = clutchIntent(snapshot, clutch) !== 'leave_with_parents'
    const tanks = freeLarvalTanks(snapshot)
    return [
      {
        roundId: firstRound(day).id,
        lateAfterMinutes: 60,
        content: taskContent({
          verb: 'look',
          title: phrase('What has hatched?'),
          steps: morningSteps(raises),
          fields: [
            ...hatchedFields(clutchEggs(snapshot, clutch) ?? outlook.species.clutchSize.value.to),
            ...(raises ? tankFields(tanks) : []),
            ...(clutch.care === 'nest' ? [eggStageField] : []),
            noteField(),
          ],
          because: [...chanceLinks(outlook), parameter('fromChance', 'and')],
        }),
        context: { hatchedOn, tankId: tanks[0]?.id ?? null, species: clutch.species, raises },
      },
    ]
  },
  record: ({ context, values, subjectId }) => {
    const planned = MorningContextSchema.parse(context)
    const hatched = textOf(values, 'hatched')
    const seen = seenFact(subjectId, { values, isAllHatched: hatched === 'all' })
    if (hatched !== 'part' && hatched !== 'all') return { facts: [seen] }
    const { hatchedOn, species } = planned
    const larvae = numberOf(values, 'larvae')
    const number = larvae === undefined ? {} : { larvae: Math.round(larvae) }
    const tankId = textOf(values, 'tank') ?? planned.tankId
    if (!planned.raises || tankId === null)
      return { facts: [{ kind: 'hatch', subjectId, data: { hatchedOn, ...number } }, seen] }
    return {
      facts: [seen],
      creations: [{ kind: 'larval_batch', tankId, species, clutchIds: [subjectId], hatchedOn, ...number }],
    }
  },
})

function morningSteps(raises: boolean): Phrase[] {
  const first = phrase('Before the lights come on: larvae at the surface, and eggs left on the nest?')
  if (!raises) return [first, phrase('They are left with their parents: nothing to move.')]
  return [
    first,
    phrase('About how many: count a tenth of the surface, or the eggs that are left.'),
    phrase('Take the nest out, or leave it with air for the second night when a good part is still on it.'),
    phrase('Lights on low; first food within a few hours.'),
  ]
}

/** How much has hatched, of about so many eggs. */
function hatchedFields(eggs: number): TaskField[] {
  return [
    choiceField({
      name: 'hatched',
      label: 'Hatched',
      isRequired: true,
      choices: [
        { value: 'none', label: 'none' },
        { value: 'part', label: 'a part' },
        { value: 'all', label: 'all, or nearly' },
      ],
    }),
    numberField({
      name: 'larvae',
      label: 'About how many larvae',
      unit: 'animals',
      minimum: 0,
      maximum: 100_000,
      likely: [1, Math.max(50, eggs * 1.1)],
      usual: null,
      step: 10,
    }),
  ]
}

/** Where they are; the first empty larval tank when nothing is said. */
function tankFields(tanks: readonly SnapshotTank[]): TaskField[] {
  const [first] = tanks
  if (!first) return []
  return [
    choiceField({
      name: 'tank',
      label: 'They are in',
      help: `${first.name} when left empty.`,
      choices: tanks.map(({ id, name }) => ({ value: id, label: name })),
    }),
  ]
}

/** What was seen of the nest: the colour of what is left says how far the rest is. */
function seenFact(subjectId: string, given: { values: Values; isAllHatched: boolean }): FactDraft {
  const { values, isAllHatched } = given
  const note = textOf(values, 'note')
  const eggStage = isAllHatched ? undefined : choiceOf(values, 'eggStage', eggStages)
  return {
    kind: 'observation',
    subjectId,
    data: {
      signs: isAllHatched ? ['no_eggs'] : ['eggs_seen'],
      ...(eggStage ? { eggStage } : {}),
      ...(note ? { note } : {}),
    },
  }
}
