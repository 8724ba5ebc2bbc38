import { type Because, eggStages } from '@fryward/shared'
import { z } from 'zod'
import { addDays, addMinutes, type HusbandryDay } from '../../calendar/husbandry-day.ts'
import { commonPractice, fromMemory, published } from '../../engine/parameters.ts'
import { computedLink, defineRule, type FactDraft, factLink, Gap, settingLink } from '../../engine/rule.ts'
import type { RoomSnapshot, SnapshotClutch, SnapshotTank } from '../../snapshot.ts'
import { lastCare } from '../../state/care.ts'
import { type ClutchOutlook, clutchOutlook } from '../../state/clutch-outlook.ts'
import { clutchEggs, clutchState } from '../../state/clutch-state.ts'
import { factsOnDay, factsUntil } from '../../state/day-facts.ts'
import { hatchNightCautions } from '../cautions.ts'
import { choiceField, noteField, numberField } from '../fields.ts'
import { litres, perMl, share } from '../measures.ts'
import { likelihoodText, phrase, taskContent } from '../phrases.ts'
import { morningAfterId, morningAfterParameters, nightBefore } from '../plans/morning-after.ts'
import { firstRound, lastRound, roundBefore } from '../rounds.ts'
import { choiceOf, numberOf, textOf } from '../values.ts'
import { clutchById, eggStageField } from './clutch-look.ts'

/** The clutch with its forecast, while it is to be raised, in part or whole. */
function toRaise(snapshot: RoomSnapshot, id: string, day: HusbandryDay) {
  const clutch = clutchById(snapshot, id)
  if (clutchState(snapshot, clutch) !== 'incubating' || clutch.intent === 'leave_with_parents') return null
  const outlook = clutchOutlook(snapshot, clutch, day)
  return { clutch, outlook, isDecided: clutch.intent !== 'undecided' }
}

/** Larval tanks without larvae, in order of name: where tonight's may go. */
export function freeLarvalTanks(snapshot: RoomSnapshot): SnapshotTank[] {
  return snapshot.tanks
    .filter((tank) => tank.kind === 'larval' && !snapshot.batches.some(({ tankId }) => tankId === tank.id))
    .sort((a, b) => a.name.localeCompare(b.name, 'en') || (a.id < b.id ? -1 : 1))
}

function chanceLinks(outlook: ClutchOutlook): Because[] {
  return [
    ...outlook.because,
    computedLink('hatchNights', null, {
      label: 'chance that it is tonight',
      quantity: share(Number(outlook.tonight.toFixed(2))),
    }),
  ]
}

const mayBe = (clutch: SnapshotClutch) => (clutch.care === 'nest' ? 'may hatch' : 'may be let go')
const eventOf = (clutch: SnapshotClutch) => (clutch.care === 'nest' ? 'hatching' : 'release')

export const clutchReady = defineRule({
  id: 'clutch-ready',
  title: 'Make ready for the hatch',
  sentence: 'When the night within {daysAhead} is at least {fromChance} likely, have tank, food and darkness ready.',
  subject: 'clutch',
  station: 'broodstock',
  isOnByDefault: true,
  parameters: {
    daysAhead: {
      type: 'number',
      label: 'days ahead',
      unit: 'days',
      default: 1,
      minimum: 0,
      maximum: 7,
      source: commonPractice('the day before, and on the day'),
    },
    fromChance: {
      type: 'number',
      label: 'from a chance of',
      unit: 'share',
      default: 0.2,
      minimum: 0.02,
      maximum: 0.95,
      source: commonPractice('one night in five is worth an empty tank'),
    },
  },
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const found = toRaise(snapshot, subject.id, day)
    if (!found) return []
    const { clutch, outlook, isDecided } = found
    const until = addDays(day.date, parameters.daysAhead)
    const chance = outlook.forecast.nights
      .filter(({ date }) => date >= day.date && date <= until)
      .reduce((sum, { probability }) => sum + probability, 0)
    if (chance < parameters.fromChance) return []
    if (!isDecided)
      throw new Gap(`${clutch.name} ${mayBe(clutch)} soon: decide on its page whether to raise all, part or none.`)
    if (lastCare(snapshot, 'ready_hatch_tank', { subjectId: clutch.id, day })) return []
    const [tank] = freeLarvalTanks(snapshot)
    if (!tank) throw new Gap(`${clutch.name} ${mayBe(clutch)} soon, and no larval tank is empty: ready one or add one.`)
    const { rotifersPerMl, firstFood } = outlook.species.feeding
    return [
      {
        roundId: firstRound(day).id,
        content: taskContent({
          verb: 'check',
          title: phrase(`Ready ${tank.name} for ${clutch.name}`),
          steps: [
            phrase(
              `${tank.name} clean, filled to {volume} with the parents’ own water or matched to it, gentle air, warm.`,
              {
                volume: litres(tank.volumeL),
              },
            ),
            ...(firstFood.value === 'rotifer' && rotifersPerMl.value
              ? [
                  phrase('Rotifers for the first morning: {density} of the tank’s water, counted and small enough.', {
                    density: perMl(rotifersPerMl.value.to),
                  }),
                ]
              : [phrase(`First food ready for the morning: ${firstFood.value}.`)]),
            phrase('Something to cover the tank with: no lamp, no window, no glow of a pump.'),
            phrase('A clean carrier for the nest, an air stone to stand in for the male, a dim red torch.'),
          ],
          cautions: outlook.species.cautions.map(({ value }) => value),
          because: [...chanceLinks(outlook), parameter('fromChance', 'and'), parameter('daysAhead', 'and')],
        }),
        context: {},
      },
    ]
  },
  record: ({ subjectId }) => ({ facts: [{ kind: 'care', subjectId, data: { act: 'ready_hatch_tank' } }] }),
})

export const clutchPullNest = defineRule({
  id: 'clutch-pull-nest',
  title: 'Pull the nest',
  sentence: 'When hatching tonight is at least {fromChance} likely, pull the nest that afternoon, with air on it.',
  subject: 'clutch',
  station: 'broodstock',
  isOnByDefault: true,
  parameters: {
    fromChance: {
      type: 'number',
      label: 'from a chance of',
      unit: 'share',
      default: 0.5,
      minimum: 0.05,
      maximum: 0.95,
      source: commonPractice('nests moved hours before the hatch, the same night; likelier than not'),
    },
  },
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const found = toRaise(snapshot, subject.id, day)
    if (found?.clutch.care !== 'nest' || !found.isDecided) return []
    const { clutch, outlook } = found
    if (outlook.tonight < parameters.fromChance) return []
    const pulled = lastCare(snapshot, 'pull_nest', { subjectId: clutch.id, day })
    const back = lastCare(snapshot, 'move_nest_back', { subjectId: clutch.id, day })
    if (pulled && (!back || back.at < pulled.at)) return []
    const [tank] = freeLarvalTanks(snapshot)
    const round = roundBefore(day, day.lightsOffAt)
    return [
      {
        roundId: round.id,
        closesAt: day.lightsOffAt > round.startsAt ? day.lightsOffAt : day.endsAt,
        isForStandIn: true,
        content: taskContent({
          verb: 'pull',
          title: phrase(`Pull the nest of ${clutch.name}: tonight ${likelihoodText(outlook.tonight)}`),
          steps: [
            phrase(`Into ${tank?.name ?? 'an empty larval tank'}, under water all the way: eggs never see air.`),
            phrase('An air stone a finger from the eggs, so that they sway as under the male: not a jet, not still.'),
            phrase('Leave the parents a bare tile. Note how the eggs look: silver eyes are tonight’s.'),
            phrase('Done before lights off. If you doubt it, wait: a day with the male costs nothing.'),
          ],
          cautions: hatchNightCautions,
          fields: [noteField()],
          because: [...chanceLinks(outlook), parameter('fromChance', 'and')],
        }),
        context: {},
      },
    ]
  },
  record: ({ values, subjectId }) => {
    const note = textOf(values, 'note')
    return { facts: [{ kind: 'care', subjectId, data: { act: 'pull_nest', ...(note ? { note } : {}) } }] }
  },
})

/** Nights on which eggs stand in a larval tank: pulled and neither hatched out nor brought back. */
function isNestPulled(snapshot: RoomSnapshot, clutch: SnapshotClutch, day: HusbandryDay): boolean {
  const pulled = lastCare(snapshot, 'pull_nest', { subjectId: clutch.id, day })
  const back = lastCare(snapshot, 'move_nest_back', { subjectId: clutch.id, day })
  return pulled !== undefined && (!back || back.at < pulled.at)
}

export const clutchDark = defineRule({
  id: 'clutch-dark',
  title: 'Make it dark',
  sentence:
    'On a night that is at least {fromChance} likely, or while a nest is pulled, make it wholly dark and keep it so.',
  subject: 'clutch',
  station: 'broodstock',
  isOnByDefault: true,
  parameters: {
    fromChance: {
      type: 'number',
      label: 'from a chance of',
      unit: 'share',
      default: 0.2,
      minimum: 0.02,
      maximum: 0.95,
      source: published(
        'no clutch hatched under light at night: Fobert, Burke da Silva & Swearer 2019, Biol. Lett. 15(7) 20190272',
      ),
    },
  },
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const found = toRaise(snapshot, subject.id, day)
    if (found?.clutch.care !== 'nest') return []
    const { clutch, outlook } = found
    const isPulled = isNestPulled(snapshot, clutch, day)
    if (outlook.tonight < parameters.fromChance && !isPulled) return []
    if (factsOnDay(snapshot, 'care', { subjectId: clutch.id, day }).some(({ data }) => data.act === 'darken')) return []
    return [
      {
        roundId: lastRound(day).id,
        content: taskContent({
          verb: 'check',
          title: phrase(`Dark over ${clutch.name} from lights off`),
          steps: [
            phrase('Cover the tank on all sides; tape over every light of plugs, pumps and heaters.'),
            phrase('From lights off nobody puts a lamp on in the room; a dim red one if you must.'),
          ],
          because: [...chanceLinks(outlook), parameter('fromChance', 'and')],
        }),
        context: {},
      },
    ]
  },
  record: ({ subjectId }) => ({ facts: [{ kind: 'care', subjectId, data: { act: 'darken' } }] }),
})

const watchValues = ['none', 'some', 'most'] as const

export const clutchWatch = defineRule({
  id: 'clutch-watch',
  title: 'Watch the hatch',
  sentence: 'On a night that is at least {fromChance} likely, look in the dark an hour or two after lights off.',
  subject: 'clutch',
  station: 'broodstock',
  isOnByDefault: true,
  parameters: {
    fromChance: {
      type: 'number',
      label: 'from a chance of',
      unit: 'share',
      default: 0.5,
      minimum: 0.05,
      maximum: 0.95,
      source: published('hatching 0-3 h after lights off: Dhaneesh et al. 2012, A. akallopisos'),
    },
  },
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const found = toRaise(snapshot, subject.id, day)
    if (!found) return []
    const { clutch, outlook } = found
    if (outlook.tonight < parameters.fromChance) return []
    const seen = factsUntil(snapshot, 'observation', { subjectId: clutch.id, until: day.endsAt }).some(
      ({ at }) => at >= day.lightsOffAt,
    )
    if (seen) return []
    const { from, to } = outlook.species.hatchHoursAfterLightsOff.value
    return [
      {
        roundId: lastRound(day).id,
        lateAfterMinutes: 6 * 60,
        content: taskContent({
          verb: 'look',
          title: phrase(`Watch for ${eventOf(clutch)} of ${clutch.name} in the dark`),
          steps: [
            phrase(`Between ${from} and ${to} hours after lights off, with a dim red torch, for a minute.`),
            phrase('Larvae at the surface? More air on the eggs helps the rest out.'),
            phrase('Nothing yet is no reason to stir: look once more, then leave them till morning.'),
          ],
          cautions: hatchNightCautions,
          fields: [
            choiceField({
              name: 'hatching',
              label: 'Out so far',
              isRequired: true,
              choices: [
                { value: 'none', label: 'none' },
                { value: 'some', label: 'some' },
                { value: 'most', label: 'most' },
              ],
            }),
            noteField(),
          ],
          because: [...chanceLinks(outlook), parameter('fromChance', 'and')],
        }),
        context: {},
      },
    ]
  },
  record: ({ values, subjectId }) => {
    const seen = watchValues.find((value) => value === textOf(values, 'hatching')) ?? 'none'
    const words = { none: 'None out.', some: 'Some are out.', most: 'Most are out.' }[seen]
    const note = [words, textOf(values, 'note') ?? ''].join(' ').trim()
    return { facts: [{ kind: 'observation', subjectId, data: { signs: seen === 'most' ? [] : ['eggs_seen'], note } }] }
  },
})

const MorningContextSchema = z.object({
  hatchedOn: z.string(),
  tankId: z.string().nullable(),
  species: z.string(),
  raises: z.boolean(),
})

export const clutchMorningAfter = defineRule({
  id: morningAfterId,
  title: 'The morning after',
  sentence: 'After a night that was at least {fromChance} likely, say in the morning what hatched and about how many.',
  subject: 'clutch',
  station: 'broodstock',
  isOnByDefault: true,
  parameters: morningAfterParameters,
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
    const raises = clutch.intent !== 'leave_with_parents'
    const tanks = freeLarvalTanks(snapshot)
    const eggs = clutchEggs(snapshot, clutch)
    return [
      {
        roundId: firstRound(day).id,
        lateAfterMinutes: 60,
        content: taskContent({
          verb: 'look',
          title: phrase(`What has hatched of ${clutch.name}?`),
          steps: [
            phrase('Before the lights come on: larvae at the surface, and eggs left on the nest?'),
            ...(raises
              ? [
                  phrase('About how many: count a tenth of the surface, or the eggs that are left.'),
                  phrase(
                    'Take the nest out, or leave it with air for the second night when a good part is still on it.',
                  ),
                  phrase('Lights on low; first food within a few hours.'),
                ]
              : [phrase('They are left with their parents: nothing to move.')]),
          ],
          fields: [
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
              likely: [1, Math.max(50, (eggs ?? outlook.species.clutchSize.value.to) * 1.1)],
              usual: null,
              step: 10,
            }),
            ...(raises && tanks.length > 0
              ? [
                  choiceField({
                    name: 'tank',
                    label: 'They are in',
                    help: `${tanks[0]?.name} when left empty.`,
                    choices: tanks.map(({ id, name }) => ({ value: id, label: name })),
                  }),
                ]
              : []),
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
    const note = textOf(values, 'note')
    const eggStage = hatched === 'all' ? undefined : choiceOf(values, 'eggStage', eggStages)
    const seen: FactDraft = {
      kind: 'observation',
      subjectId,
      data: {
        signs: hatched === 'all' ? ['no_eggs'] : ['eggs_seen'],
        ...(eggStage ? { eggStage } : {}),
        ...(note ? { note } : {}),
      },
    }
    if (hatched !== 'part' && hatched !== 'all') return { facts: [seen] }
    const larvae = numberOf(values, 'larvae')
    const number = larvae === undefined ? {} : { larvae: Math.round(larvae) }
    const tankId = textOf(values, 'tank') ?? planned.tankId
    if (!planned.raises || tankId === null)
      return { facts: [{ kind: 'hatch', subjectId, data: { hatchedOn: planned.hatchedOn, ...number } }, seen] }
    return {
      facts: [seen],
      creations: [
        {
          kind: 'larval_batch',
          tankId,
          species: planned.species,
          clutchIds: [subjectId],
          hatchedOn: planned.hatchedOn,
          ...number,
        },
      ],
    }
  },
})

const SecondContextSchema = z.object({ hatchedOn: z.string(), batchId: z.string().nullable() })

export const clutchSecondNight = defineRule({
  id: 'clutch-second-night',
  title: 'The second night',
  sentence:
    'When a part of a clutch is left after its night, keep it dark with air for {nights} more, and say in the morning what came.',
  subject: 'clutch',
  station: 'broodstock',
  isOnByDefault: true,
  parameters: {
    nights: {
      type: 'number',
      label: 'more nights',
      unit: 'times',
      default: 1,
      minimum: 0,
      maximum: 3,
      source: fromMemory('most of a clutch in one evening, the remainder the next: Hoff 1996; Wilkerson 1998'),
    },
  },
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const clutch = clutchById(snapshot, subject.id)
    const hatches = factsUntil(snapshot, 'hatch', { subjectId: clutch.id, until: day.endsAt })
    const first = hatches[0]
    if (clutch.care !== 'nest' || !first || clutch.intent === 'leave_with_parents') return []
    const lastNight = addDays(day.date, -1)
    const left = factsUntil(snapshot, 'observation', { subjectId: clutch.id, until: day.endsAt }).at(-1)
    if (!left?.data.signs.includes('eggs_seen')) return []
    const isWaiting = lastNight > first.data.hatchedOn && lastNight <= addDays(first.data.hatchedOn, parameters.nights)
    if (!isWaiting || hatches.some(({ data }) => data.hatchedOn === lastNight)) return []
    if (factsOnDay(snapshot, 'observation', { subjectId: clutch.id, day }).length > 0) return []
    return [
      {
        roundId: firstRound(day).id,
        content: taskContent({
          verb: 'look',
          title: phrase(`What came of ${clutch.name} in the second night?`),
          steps: [
            phrase('Larvae that came tonight join the others in the same tank.'),
            phrase('Take the nest out now: what is left will foul the water.'),
          ],
          fields: [
            numberField({
              name: 'larvae',
              label: 'Larvae of the second night',
              isRequired: true,
              unit: 'animals',
              minimum: 0,
              maximum: 100_000,
              likely: [0, Math.max(50, clutchEggs(snapshot, clutch) ?? outlookless)],
              usual: 0,
              step: 10,
            }),
          ],
          because: [
            factLink(first, { label: 'hatched the night of', text: first.data.hatchedOn }),
            factLink(left, { label: 'eggs left', joins: 'and' }),
            parameter('nights', 'and'),
            settingLink(clutch.id, 'intent', {
              label: 'to be raised',
              text: clutch.intent.replaceAll('_', ' '),
              joins: 'and',
            }),
          ],
        }),
        context: { hatchedOn: lastNight, batchId: first.data.batchId ?? null },
      },
    ]
  },
  record: ({ context, values, subjectId }) => {
    const { hatchedOn, batchId } = SecondContextSchema.parse(context)
    const larvae = Math.round(numberOf(values, 'larvae') ?? 0)
    const gone: FactDraft = { kind: 'observation', subjectId, data: { signs: ['no_eggs'] } }
    if (larvae === 0) return { facts: [gone] }
    const data = { hatchedOn, larvae, ...(batchId === null ? {} : { batchId }) }
    return { facts: [{ kind: 'hatch', subjectId, data }, gone] }
  },
})

// A clutch that nobody counted: a few hundred eggs. common practice
const outlookless = 500

export const clutchDeadEggs = defineRule({
  id: 'clutch-dead-eggs',
  title: 'Take dead eggs out',
  sentence:
    'When at least {fromShare} of a clutch was seen dead within a day, take the dead eggs out before they mould.',
  subject: 'clutch',
  station: 'broodstock',
  isOnByDefault: true,
  parameters: {
    fromShare: {
      type: 'number',
      label: 'from a share of',
      unit: 'share',
      default: 0.05,
      minimum: 0.005,
      maximum: 0.9,
      source: commonPractice('the parents take out single ones'),
    },
  },
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const clutch = clutchById(snapshot, subject.id)
    if (clutch.care !== 'nest' || clutchState(snapshot, clutch) !== 'incubating') return []
    const eggs = clutchEggs(snapshot, clutch)
    if (eggs === null || eggs === 0) return []
    const removed = lastCare(snapshot, 'remove_dead_eggs', { subjectId: clutch.id, day })
    const since = addMinutes(day.startsAt, -24 * 60)
    const losses = factsUntil(snapshot, 'loss', { subjectId: clutch.id, until: day.endsAt }).filter(
      ({ at, data }) => data.of === 'eggs' && at >= since && (!removed || at > removed.at),
    )
    const dead = losses.reduce((sum, { data }) => sum + data.number, 0)
    if (dead < parameters.fromShare * eggs) return []
    return [
      {
        roundId: lastRound(day).id,
        content: taskContent({
          verb: 'clean',
          title: phrase(`Take the dead eggs of ${clutch.name} out`),
          steps: [
            phrase('White or furred ones only, with a thin siphon or a blunt pipette, from the edge inwards.'),
            phrase('While the parents guard: quick and gentle, or leave it to them.'),
          ],
          because: [
            ...losses.map((fact) =>
              factLink(fact, {
                label: 'dead',
                quantity: { value: fact.data.number, unit: 'eggs' },
                joins: 'plus' as const,
              }),
            ),
            settingLink(clutch.id, 'eggs', {
              label: 'of',
              quantity: { value: eggs, unit: 'eggs' },
              joins: 'divided_by',
            }),
            parameter('fromShare', 'and'),
          ],
        }),
        context: {},
      },
    ]
  },
  record: ({ subjectId }) => ({ facts: [{ kind: 'care', subjectId, data: { act: 'remove_dead_eggs' } }] }),
})
