import { type CareKind, eggStages, type Phrase, type PlainDate, type TaskField } from '@fryward/shared'
import { z } from 'zod'
import { dayMonth } from '../../calendar/day-month.ts'
import { addDays, type HusbandryDay } from '../../calendar/husbandry-day.ts'
import { firstRound } from '../../calendar/rounds.ts'
import { clutchMorningAfterDefinition } from '../../definitions/broodstock/clutch-morning-after.ts'
import type { FactDraft } from '../../facts/fact.ts'
import { culturesToFeed, workingCopepods } from '../../plans/culture-to-feed.ts'
import { freeLarvalTanks, hatchTankFor } from '../../plans/hatch-tank-plan.ts'
import { nightBefore } from '../../plans/morning-after.ts'
import { defineRule } from '../../rule/rule.ts'
import { clutchById, tankById } from '../../snapshot/by-id.ts'
import type { RoomSnapshot, SnapshotClutch, SnapshotCulture, SnapshotTank } from '../../snapshot/room-snapshot.ts'
import { isBrooder } from '../../species/index.ts'
import { clutchEggs, clutchIntent, clutchState } from '../../state/clutch-state.ts'
import { factsOnDay } from '../../state/day-facts.ts'
import { tankOf } from '../../state/larval-diet.ts'
import { litDay } from '../../state/tank-light.ts'
import { choiceField, noteField, numberField } from '../../task/fields.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { choiceOf, numberOf, textOf, type Values } from '../../task/values.ts'
import { eggStageField } from './clutch-look.ts'
import { chanceLinks } from './hatch-night.ts'

const MorningContextSchema = z.object({
  hatchedOn: z.string(),
  /** Where they are when nothing else is said; null in tasks that were kept before there was always an answer. */
  tankId: z.string().nullable(),
  species: z.string(),
  raises: z.boolean(),
  cultureId: z.string().nullable().default(null),
  /** Copepods of the room, for larvae that start on them; tasks that were kept before did not say. */
  copepodIds: z.array(z.string()).default([]),
  /** What a tank made for them is set to: the water that they hatched in. */
  water: z.object({ temperatureC: z.number(), salinity: z.number() }).nullable().default(null),
})

/** Answers of the tank that name none. */
const newTank = 'new'
const leftWithParents = 'left'
// As far back as a hatch may have gone unseen before its larvae starve. common practice
const nightsBack = 3

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
    const places = {
      free: freeLarvalTanks(snapshot),
      readied: hatchTankFor(snapshot, clutch, day),
      own: tankById(snapshot, clutch.tankId),
    }
    const { firstFood } = outlook.species.feeding
    const copepods = firstFood.value === 'copepod' ? workingCopepods(snapshot, day) : []
    const cultures = outlook.species.feeding.rotifersPerMl.value === null ? [] : culturesToFeed(snapshot, day)
    return [
      {
        roundId: firstRound(day).id,
        lateAfterMinutes: 60,
        content: taskContent({
          verb: 'look',
          title: titled(isBrooder(clutch.care) ? 'what_released' : 'what_hatched'),
          steps: morningSteps(clutch.care, { raises, copepods }),
          fields: [
            ...hatchedFields(clutch.care, clutchEggs(snapshot, clutch), outlook.species.clutchSize.value.to),
            nightField(clutch.care, { nights: nightsSince(snapshot, clutch, day), hatchedOn }),
            ...(raises ? [...placeFields(clutch.care, places), ...feederFields(cultures)] : []),
            ...(clutch.care === 'nest' ? [eggStageField] : []),
            noteField(),
          ],
          because: [...chanceLinks(outlook), parameter('fromChance', 'and')],
        }),
        context: {
          hatchedOn,
          tankId: (places.readied ?? places.own).id,
          species: clutch.species,
          raises,
          cultureId: cultures[0]?.id ?? null,
          copepodIds: copepods.map(({ id }) => id),
          water: { temperatureC: places.own.temperatureC, salinity: places.own.salinity },
        },
      },
    ]
  },
  check: (values) =>
    textOf(values, 'tank') === newTank && numberOf(values, 'newTankL') === undefined && didHatch(values)
      ? [{ path: 'values.newTankL', message: 'Say how many litres the new tank holds: every amount follows from it.' }]
      : [],
  record: ({ context, values, subjectId }) => {
    const planned = MorningContextSchema.parse(context)
    const hatched = textOf(values, 'hatched')
    const seen = seenFact(subjectId, { values, isAllHatched: hatched === 'all' })
    if (!didHatch(values)) return { facts: [seen] }
    const hatchedOn = textOf(values, 'night') ?? planned.hatchedOn
    const { species, water } = planned
    const larvae = numberOf(values, 'larvae')
    const number = larvae === undefined ? {} : { larvae: Math.round(larvae) }
    const place = textOf(values, 'tank') ?? planned.tankId
    if (!planned.raises || place === null || place === leftWithParents)
      return { facts: [{ kind: 'hatch', subjectId, data: { hatchedOn, ...number } }, seen] }
    const newTankL = numberOf(values, 'newTankL')
    const tank = place === newTank && newTankL !== undefined && water ? { volumeL: newTankL, ...water } : { id: place }
    const cultureId = textOf(values, 'culture') ?? planned.cultureId
    return {
      facts: [seen],
      creations: [
        {
          kind: 'larval_batch',
          tank,
          species,
          clutchIds: [subjectId],
          hatchedOn,
          ...number,
          cultureIds: [...(cultureId === null ? [] : [cultureId]), ...planned.copepodIds],
        },
      ],
    }
  },
})

const didHatch = (values: Values): boolean => ['part', 'all'].includes(textOf(values, 'hatched') ?? '')

/** Nights in which it may have hatched, last night first: none before it was laid, and tonight's is still to come. */
function nightsSince(snapshot: RoomSnapshot, clutch: SnapshotClutch, day: HusbandryDay): PlainDate[] {
  return Array.from({ length: nightsBack }, (_, back) => addDays(day.date, -1 - back)).filter(
    (date) => litDay(snapshot, tankOf(snapshot, clutch), date).lightsOffAt > clutch.spawnedAt,
  )
}

type Words = { look: string; many: string; next: string; hatched: string; own: string }

const afterNest: Words = {
  look: 'Before the lights come on: larvae at the surface, and eggs left on the nest?',
  many: 'About how many: count a tenth of the surface, or the eggs that are left.',
  next: 'Take the nest out, or leave it with air for the second night when a good part is still on it.',
  hatched: 'Hatched',
  own: 'where the eggs were',
}
// Common practice: a net rubs them, and seahorses that are lifted out of water swallow air.
const afterBrood: Words = {
  look: 'Before the lights come on: young in the water, and does the parent still carry?',
  many: 'About how many: count them as they are moved, a cupful at a time.',
  next: 'Over to their tank in a cup or a jug, in water, never in a net and never through the air. Leave a parent that still carries in peace: the rest come in the nights after.',
  hatched: 'Released',
  own: 'with the parents',
}

/** How a morning after is told, by who has kept the eggs. */
const wordsOf: Record<CareKind, Words> = {
  nest: afterNest,
  mouth: afterBrood,
  pouch: afterBrood,
  pelagic: {
    ...afterNest,
    look: 'Before the lights come on: larvae at the surface, and eggs still afloat?',
    next: 'Siphon off eggs that sank or turned white: they are dead. Clear ones that float may hatch next night.',
  },
}

type Raised = { raises: boolean; copepods: readonly SnapshotCulture[] }

function morningSteps(care: CareKind, { raises, copepods }: Raised): Phrase[] {
  const { look, many, next } = wordsOf[care]
  if (!raises) return [phrase(look), phrase('They are left with their parents: nothing to move.')]
  return [
    phrase(look),
    phrase(many),
    phrase(next),
    care === 'pelagic'
      ? phrase(`They live on their yolk for another day. ${firstFoodOf(copepods)}`)
      : phrase('Lights on low; first food this morning: it is on the list as soon as this is written down.'),
  ]
}

const firstFoodOf = (copepods: readonly SnapshotCulture[]): string =>
  copepods.length > 0
    ? `Nauplii of ${copepods.map(({ name }) => name).join(' and ')} are on the list for them from tomorrow on.`
    : 'Food from tomorrow on, as small as you can get it: copepod nauplii or ciliates, and the smallest rotifers.'

/** How much has hatched: of so many eggs, or of as many as its kind lays at most where nobody has counted. */
function hatchedFields(care: CareKind, eggs: number | null, mostOfItsKind: number): TaskField[] {
  return [
    choiceField({
      name: 'hatched',
      label: wordsOf[care].hatched,
      isRequired: true,
      choices: [
        { value: 'none', label: 'none' },
        { value: 'part', label: 'a part' },
        { value: 'all', label: 'all, or nearly' },
      ],
    }),
    numberField({
      name: 'larvae',
      label: isBrooder(care) ? 'About how many young' : 'About how many larvae',
      help: eggs === null ? null : `Of ${eggs} eggs by the book.`,
      unit: 'animals',
      minimum: 0,
      maximum: 100_000,
      likely: [1, Math.max(1, eggs ?? mostOfItsKind)],
      usual: null,
      step: (eggs ?? mostOfItsKind) < 100 ? 1 : 10,
    }),
  ]
}

function nightField(
  care: CareKind,
  { nights, hatchedOn }: { nights: readonly PlainDate[]; hatchedOn: PlainDate },
): TaskField {
  const words = ['last night', 'the night before', 'two nights before']
  const taken = words[nights.indexOf(hatchedOn)] ?? dayMonth(hatchedOn)
  return choiceField({
    name: 'night',
    label: 'In the night',
    help: `${taken.charAt(0).toUpperCase()}${taken.slice(1)} when left empty. The ${isBrooder(care) ? 'young' : 'larvae'} are fed by their age.`,
    choices: nights.map((date, back) => ({ value: date, label: `${words[back]} (from ${dayMonth(date)})` })),
  })
}

type Places = { free: readonly SnapshotTank[]; readied: SnapshotTank | null; own: SnapshotTank }

/** Where they are: an empty larval tank, a new one, or the tank in which they hatched. */
function placeFields(care: CareKind, { free, readied, own }: Places): TaskField[] {
  const words = wordsOf[care]
  const none = free.length === 0 ? 'No larval tank is empty' : 'Every empty larval tank is for another clutch'
  return [
    choiceField({
      name: 'tank',
      label: 'They are in',
      help: readied ? `${readied.name} when left empty.` : `${none}: ${own.name}, ${words.own}, when left empty.`,
      choices: [
        ...free.map(({ id, name }) => ({ value: id, label: name })),
        { value: own.id, label: `${own.name}, ${words.own}` },
        { value: newTank, label: 'a tank that is not on the list yet' },
        { value: leftWithParents, label: 'left with the parents: not raised' },
      ],
    }),
    numberField({
      name: 'newTankL',
      label: 'A tank not on the list holds',
      help: 'Only for a tank that is not on the list yet.',
      unit: 'L',
      minimum: 1,
      maximum: 2000,
      likely: [5, 200],
      usual: null,
      step: 1,
    }),
  ]
}

/** Which culture feeds them; a room with one has nothing to choose. */
function feederFields(cultures: readonly SnapshotCulture[]): TaskField[] {
  const [first, ...others] = cultures
  if (!first || others.length === 0) return []
  return [
    choiceField({
      name: 'culture',
      label: 'Fed from',
      help: `${first.name} when left empty.`,
      choices: cultures.map(({ id, name }) => ({ value: id, label: name })),
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
