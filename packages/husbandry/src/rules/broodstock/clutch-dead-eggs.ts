import { addHours } from '../../calendar/elapsed.ts'
import { lastRound } from '../../calendar/rounds.ts'
import { clutchDeadEggsDefinition } from '../../definitions/broodstock/clutch-dead-eggs.ts'
import { defineRule } from '../../rule/rule.ts'
import { factLink, settingLink } from '../../rule/why.ts'
import { clutchById } from '../../snapshot/by-id.ts'
import { lastCare } from '../../state/care.ts'
import { clutchEggs, clutchState } from '../../state/clutch-state.ts'
import { factsUntil } from '../../state/day-facts.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'

export const clutchDeadEggs = defineRule(clutchDeadEggsDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const clutch = clutchById(snapshot, subject.id)
    if (clutch.care !== 'nest' || clutchState(snapshot, clutch) !== 'incubating') return []
    const eggs = clutchEggs(snapshot, clutch)
    if (eggs === null || eggs === 0) return []
    const removed = lastCare(snapshot, 'remove_dead_eggs', { subjectId: clutch.id, day })
    const since = addHours(day.startsAt, -24)
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
          title: titled('remove', { thing: 'the dead eggs' }),
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
