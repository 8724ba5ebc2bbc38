import { elapsedHours } from '../../calendar/elapsed.ts'
import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import { type DayRound, roundBefore, roundsInOrder } from '../../calendar/rounds.ts'
import { clutchPullNestDefinition } from '../../definitions/broodstock/clutch-pull-nest.ts'
import { hatchTankFor, toRaise } from '../../plans/hatch-tank-plan.ts'
import { defineRule } from '../../rule/rule.ts'
import { tankOf } from '../../state/larval-diet.ts'
import { litDay } from '../../state/tank-light.ts'
import { hatchNightCautions } from '../../task/cautions.ts'
import { noteField } from '../../task/fields.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { textOf } from '../../task/values.ts'
import { chanceLinks, isNestPulled } from './hatch-night.ts'

export const clutchPullNest = defineRule(clutchPullNestDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const found = toRaise(snapshot, subject.id, day)
    if (found?.clutch.care !== 'nest' || !found.isDecided) return []
    const { clutch, outlook } = found
    if (outlook.tonight < parameters.fromChance) return []
    if (isNestPulled(snapshot, clutch, day)) return []
    const tank = hatchTankFor(snapshot, clutch, day)
    const lit = litDay(snapshot, tankOf(snapshot, clutch), day.date)
    const round = afternoonRound(lit, parameters.hoursBeforeDark)
    return [
      {
        roundId: round.id,
        closesAt: lit.lightsOffAt > round.startsAt ? lit.lightsOffAt : day.endsAt,
        isForStandIn: true,
        content: taskContent({
          verb: 'pull',
          title: titled('pull', { thing: 'the nest', details: [{ kind: 'tonight', probability: outlook.tonight }] }),
          steps: [
            phrase(`Into ${tank?.name ?? 'an empty larval tank'}, under water all the way: eggs never see air.`),
            phrase('An air stone a finger from the eggs, so that they sway as under the male: not a jet, not still.'),
            phrase('Leave the parents a bare tile. Note how the eggs look: silver eyes are tonight’s.'),
            phrase('Done before lights off. If you doubt it, wait: a day with the male costs nothing.'),
          ],
          looks: ['eggs_silver'],
          cautions: hatchNightCautions,
          fields: [noteField()],
          because: [...chanceLinks(outlook), parameter('fromChance', 'and'), parameter('hoursBeforeDark', 'and')],
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

// A nest pulled in the morning is a day without its father. common practice
const earliestHoursBeforeDark = 8

/** The last round of the afternoon that leaves time before dark, else its first; where it has none, the last before dark. */
function afternoonRound(day: HusbandryDay, hoursBeforeDark: number): DayRound {
  const left = ({ startsAt }: DayRound) => elapsedHours(startsAt, day.lightsOffAt)
  const afternoon = roundsInOrder(day).filter((round) => left(round) > 0 && left(round) <= earliestHoursBeforeDark)
  return (
    afternoon.findLast((round) => left(round) >= hoursBeforeDark) ?? afternoon[0] ?? roundBefore(day, day.lightsOffAt)
  )
}
