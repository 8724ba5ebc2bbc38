import type { Because } from '@fryward/shared'
import { firstRound, roundOfInstant, roundsInOrder } from '../../calendar/rounds.ts'
import { tankOxygenDefinition } from '../../definitions/room/tank-oxygen.ts'
import { type TankOxygen, tankOxygen } from '../../plans/tank-oxygen-plan.ts'
import { defineRule } from '../../rule/rule.ts'
import { computedLink, factLink, settingLink } from '../../rule/why.ts'
import { tankById } from '../../snapshot/by-id.ts'
import type { SnapshotTank } from '../../snapshot/room-snapshot.ts'
import type { KnownWater } from '../../state/oxygen-held.ts'
import { hasLarvae, holdsFish } from '../../state/tank-fish.ts'
import { readBy } from '../../state/water-reads.ts'
import { numberField } from '../../task/fields.ts'
import { share } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { waterTestFacts } from '../parts/water-test.ts'

export const tankOxygenLow = defineRule(tankOxygenDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const tank = tankById(snapshot, subject.id)
    if (!holdsFish(snapshot, tank, day) && !hasLarvae(snapshot, tank)) return []
    const found = tankOxygen(snapshot, tank, day)
    if (!found || found.share >= parameters.leastShare) return []
    // In the standing of the reading, so that a second one of a day has a second look.
    const { at } = found.read
    const round = (at >= day.startsAt && roundOfInstant(roundsInOrder(day), at)) || firstRound(day)
    return [
      {
        roundId: round.id,
        lateAfterMinutes: 60,
        content: taskContent({
          verb: 'look',
          title: titled('see_to', { details: [{ kind: 'because', words: ['oxygen is low'] }] }),
          steps: [
            phrase('Gasping at the surface, or larvae that hang there: more air first, then look.'),
            phrase(
              'Look for a kinked line, a clogged stone, a pump that stands, and for what has died or lies uneaten.',
            ),
            phrase('No food until it is back. Measure again before you leave, where you can.'),
          ],
          fields: [oxygenAgain],
          because: [...oxygenLinks(tank, found), parameter('leastShare', 'and')],
        }),
        context: {},
      },
    ]
  },
  record: ({ values, subjectId }) => ({ facts: waterTestFacts(subjectId, values) }),
})

const oxygenAgain = numberField({
  name: 'oxygenMgPerL',
  label: 'Oxygen, measured again',
  unit: 'mg_per_L',
  minimum: 0,
  maximum: 30,
  likely: [3, 9],
  step: 0.1,
})

/** Who read how much when, in which water, and what share of saturation that is. */
function oxygenLinks(tank: SnapshotTank, { read, held, share: part }: TankOxygen): Because[] {
  return [
    factLink(read.fact, { label: `oxygen read ${readBy(read)}`, quantity: { value: read.value, unit: 'mg_per_L' } }),
    waterLink(tank, held.temperatureC, { unit: 'degC', of: 'temperature' }),
    waterLink(tank, held.salinity, { unit: 'psu', of: 'salinity' }),
    computedLink('oxygen by warmth and salinity', 'Benson & Krause 1984, Limnol. Oceanogr. 29:620-632; at sea level', {
      label: 'of saturation',
      quantity: share(Number(part.toFixed(2))),
    }),
  ]
}

type Of = { unit: 'degC' | 'psu'; of: string }

function waterLink(tank: SnapshotTank, { value, read }: KnownWater, { unit, of }: Of): Because {
  const link = { quantity: { value, unit }, joins: 'and' } as const
  if (read) return factLink(read.fact, { label: `${of} read ${readBy(read)}`, ...link })
  return settingLink(tank.id, `set ${of}`, { label: `${of}, set and not read lately`, ...link })
}
