import { clutchIntents, type Phrase } from '@fryward/shared'
import { addDays } from '../../calendar/husbandry-day.ts'
import { afterMorning } from '../../calendar/rounds.ts'
import { clutchDecideDefinition } from '../../definitions/broodstock/clutch-decide.ts'
import { growOutAhead } from '../../plans/grow-out-room.ts'
import { clutchesToRaise, freeLarvalTanks, toRaise } from '../../plans/hatch-tank-plan.ts'
import { defineRule } from '../../rule/rule.ts'
import { ruleInForce } from '../../rule/rule-in-force.ts'
import { settingLink } from '../../rule/why.ts'
import type { RoomSnapshot } from '../../snapshot/room-snapshot.ts'
import { isBrooder } from '../../species/index.ts'
import { chanceOfNights } from '../../state/clutch-outlook.ts'
import { clutchEggs } from '../../state/clutch-state.ts'
import { choiceField } from '../../task/fields.ts'
import { animals, litres } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { choiceOf } from '../../task/values.ts'
import { mayBe, nightsLink } from './hatch-night.ts'

const choices = [
  { value: 'raise_all', label: 'raise all' },
  { value: 'raise_part', label: 'raise a part' },
  { value: 'leave_with_parents', label: 'none: leave them with the parents' },
]

/** Whether a room asks for the decision as a task; where it does not, a missing decision has to be said otherwise. */
export function asksForDecision(snapshot: RoomSnapshot): boolean {
  return ruleInForce(snapshot, clutchDecideDefinition).isOn
}

export const clutchDecide = defineRule(clutchDecideDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const found = toRaise(snapshot, subject.id, day)
    if (!found || found.isDecided) return []
    const { clutch, outlook } = found
    const nights = { from: day.date, to: addDays(day.date, parameters.daysAhead) }
    if (chanceOfNights(outlook, nights) < parameters.fromChance) return []
    const tanks = freeLarvalTanks(snapshot)
    const others = clutchesToRaise(snapshot, day).map(({ name }) => name)
    const eggs = clutchEggs(snapshot, clutch)
    return [
      {
        roundId: afterMorning(day).id,
        // What a room takes on for two months is not a stand-in's to say.
        isForStandIn: false,
        content: taskContent({
          verb: 'decide',
          title: titled('decide_clutch'),
          steps: [
            phrase(`It ${mayBe(clutch)} within {days}.`, { days: { value: parameters.daysAhead, unit: 'days' } }),
            ...(tanks.length > 0
              ? tanks.map((tank) => phrase(`${tank.name} is empty: {volume}.`, { volume: litres(tank.volumeL) }))
              : [phrase('No larval tank is empty: raising them means to free one.')]),
            ...(others.length > 0
              ? [phrase(`To be raised already, each in a tank of its own: ${others.join(', ')}.`)]
              : []),
            ...growOutSteps(snapshot),
            phrase(
              'Raised ones need live food several times a day for weeks: the page of each culture says what it can give.',
            ),
          ],
          fields: [
            choiceField({
              name: 'intent',
              label: isBrooder(clutch.care) ? 'This brood' : 'This clutch',
              isRequired: true,
              choices,
            }),
          ],
          because: [
            ...outlook.because,
            nightsLink(outlook, nights),
            ...(eggs === null
              ? []
              : [
                  settingLink(clutch.id, 'eggs', {
                    label: 'in it',
                    quantity: { value: eggs, unit: 'eggs' },
                    joins: 'and' as const,
                  }),
                ]),
            parameter('daysAhead', 'and'),
            parameter('fromChance', 'and'),
          ],
        }),
        context: {},
      },
    ]
  },
  record: ({ values, subjectId }) => {
    const intent = choiceOf(values, 'intent', clutchIntents)
    return { facts: intent ? [{ kind: 'decision', subjectId, data: { intent } }] : [] }
  },
})

/** Young that settle want a place weeks after they were decided on. */
function growOutSteps(snapshot: RoomSnapshot): Phrase[] {
  const ahead = growOutAhead(snapshot)
  if (!ahead) return [phrase('There is no grow-out tank: those that settle will want one in some weeks.')]
  const room = phrase('Grow-out has room for {room} young today.', { room: animals(ahead.room) })
  if (ahead.coming === 0) return [room]
  const coming = phrase('{coming} young in larval tanks will want it before these.', { coming: animals(ahead.coming) })
  const none = phrase('So none is left for this clutch until fish are placed or a tank is added.')
  return [room, coming, ...(ahead.room > ahead.coming ? [] : [none])]
}
