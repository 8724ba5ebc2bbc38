import { commonPractice } from '../../engine/parameters.ts'
import { defineRule } from '../../engine/rule.ts'
import { hatchNightCautions } from '../cautions.ts'
import { noteField } from '../fields.ts'
import { likelihoodText, phrase, taskContent } from '../phrases.ts'
import { roundBefore } from '../rounds.ts'
import { textOf } from '../values.ts'
import { chanceLinks, freeLarvalTanks, isNestPulled, toRaise } from './hatch-night.ts'

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
      label: 'chance or more',
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
    if (isNestPulled(snapshot, clutch, day)) return []
    const [tank] = freeLarvalTanks(snapshot)
    const round = roundBefore(day, day.lightsOffAt)
    return [
      {
        roundId: round.id,
        closesAt: day.lightsOffAt > round.startsAt ? day.lightsOffAt : day.endsAt,
        isForStandIn: true,
        content: taskContent({
          verb: 'pull',
          title: phrase(`Pull the nest: tonight ${likelihoodText(outlook.tonight)}`),
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
