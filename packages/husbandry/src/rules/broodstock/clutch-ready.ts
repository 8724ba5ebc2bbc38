import { addDays } from '../../calendar/husbandry-day.ts'
import { commonPractice } from '../../engine/parameters.ts'
import { defineRule, Gap } from '../../engine/rule.ts'
import { lastCare } from '../../state/care.ts'
import { litres, perMl } from '../measures.ts'
import { phrase, taskContent } from '../phrases.ts'
import { firstRound } from '../rounds.ts'
import { asksForDecision } from './clutch-decide.ts'
import { chanceLinks, freeLarvalTanks, mayBe, toRaise } from './hatch-night.ts'

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
      label: 'ahead',
      unit: 'days',
      default: 1,
      minimum: 0,
      maximum: 7,
      source: commonPractice('the day before, and on the day'),
    },
    fromChance: {
      type: 'number',
      label: 'chance or more',
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
    if (!isDecided) {
      if (asksForDecision(snapshot)) return []
      throw new Gap(`${clutch.name} ${mayBe(clutch)} soon: decide on its page whether to raise all, part or none.`)
    }
    if (lastCare(snapshot, 'ready_hatch_tank', { subjectId: clutch.id, day })) return []
    const [tank] = freeLarvalTanks(snapshot)
    if (!tank) throw new Gap(`${clutch.name} ${mayBe(clutch)} soon, and no larval tank is empty: ready one or add one.`)
    const { rotifersPerMl, firstFood } = outlook.species.feeding
    return [
      {
        roundId: firstRound(day).id,
        content: taskContent({
          verb: 'check',
          title: phrase(`Ready ${tank.name} for the larvae`),
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
