import type { CareKind } from '@fryward/shared'
import { inTheDark, lastRound } from '../../calendar/rounds.ts'
import { clutchWatchDefinition } from '../../definitions/broodstock/clutch-watch.ts'
import { toRaise } from '../../plans/hatch-tank-plan.ts'
import { defineRule } from '../../rule/rule.ts'
import { factsUntil } from '../../state/day-facts.ts'
import { tankOf } from '../../state/larval-diet.ts'
import { litDay } from '../../state/tank-light.ts'
import { hatchNightCautions } from '../../task/cautions.ts'
import { choiceField, noteField } from '../../task/fields.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { textOf } from '../../task/values.ts'
import { chanceLinks, eventOf } from './hatch-night.ts'

/** What is looked for in the dark, and done. common practice */
const outStep: Record<CareKind, string> = {
  nest: 'Larvae at the surface? More air on the eggs helps the rest out.',
  mouth: 'Young near the parent or among what they hide in? Leave the parent in peace; the rest come by themselves.',
  pouch: 'Young at the surface? Leave the parent in peace; the rest come by themselves.',
  pelagic: 'Larvae at the surface? Gentle air keeps the rest afloat.',
}

const watchValues = ['none', 'some', 'most'] as const

const signsOf = { none: ['eggs_seen'], some: ['larvae_out', 'eggs_seen'], most: ['larvae_out'] } as const

export const clutchWatch = defineRule(clutchWatchDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const found = toRaise(snapshot, subject.id, day)
    if (!found) return []
    const { clutch, outlook } = found
    // Eggs that float hatch at any hour, in the tank that they were moved to.
    if (clutch.care === 'pelagic') return []
    const lit = litDay(snapshot, tankOf(snapshot, clutch), day.date)
    if (outlook.tonight < parameters.fromChance) return []
    const seen = factsUntil(snapshot, 'observation', { subjectId: clutch.id, until: day.endsAt }).some(
      ({ at }) => at >= lit.lightsOffAt,
    )
    if (seen) return []
    const { from, to } = outlook.species.hatchHoursAfterLightsOff.value
    const round = lastRound(day)
    return [
      {
        roundId: round.id,
        dueAt: inTheDark(lit, round),
        lateAfterMinutes: to * 60,
        content: taskContent({
          verb: 'look',
          title: titled('watch_for', { thing: `${eventOf(clutch)} in the dark` }),
          steps: [
            phrase(`Between ${from} and ${to} hours after lights off, with a dim red torch, for a minute.`),
            phrase(outStep[clutch.care]),
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
    return { facts: [{ kind: 'observation', subjectId, data: { signs: [...signsOf[seen]], note } }] }
  },
})
