import { changeFraction } from '@fryward/seawater'
import type { Because, Phrase } from '@fryward/shared'
import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import { firstRound, roundOfInstant, roundsInOrder } from '../../calendar/rounds.ts'
import type { FactOf } from '../../facts/fact.ts'
import { computedLink, settingLink } from '../../rule/why.ts'
import type { RoomSnapshot, SnapshotTank } from '../../snapshot/room-snapshot.ts'
import { daysSince } from '../../state/day-facts.ts'
import { litres, measurableL, share } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { also, titled } from '../../task/titles.ts'
import { matchSteps, waterChangeAmount, waterChangeContext, waterChangeFields } from './water-change.ts'

/** True while a water test is acted on: of today or yesterday. Later it is tested anew before water is changed. */
export const isActedOn = (snapshot: RoomSnapshot, test: FactOf<'water_test'>, day: HusbandryDay): boolean =>
  (daysSince(snapshot, test, day.date) ?? 0) <= 1

/** Where ammonia is read in a tank without one. */
export const missingFilter: Phrase = phrase(
  'No filter runs here, and fish that are fed need one: hang in a ripe sponge from a sound tank, and say so on the tank’s page.',
)

/** The same in a tank of larvae. */
export const missingSponge: Phrase = phrase(
  'No filter runs here, and they swim strongly enough for one by now: hang in a sponge that has ripened in a sound tank, its air just bubbling, and say so on the tank’s page.',
)

type Harm = {
  tank: SnapshotTank
  test: FactOf<'water_test'>
  /** What was read, its amount and what is to be left of it, mg/L. */
  of: string
  mgPerL: number
  leftMgPerL: number
  mostShare: number
}
type Said = {
  steps: Phrase[]
  cautions?: string[]
  /** What was read and the limits that it is held against. */
  read: Because[]
  /** The rule's own bound on one change. */
  most: Because
}

/** The change of water that brings down what a test read, as far as one change may go. */
export function changeAgainst(day: HusbandryDay, harm: Harm, { steps, cautions = [], read, most }: Said) {
  const { tank, test, of, mgPerL, leftMgPerL, mostShare } = harm
  // In the standing of the test, so that a second test of a day has a second change.
  const round = (test.at >= day.startsAt && roundOfInstant(roundsInOrder(day), test.at)) || firstRound(day)
  const wanted = changeFraction({ current: mgPerL, incoming: 0, target: Math.min(mgPerL, leftMgPerL) })
  const fraction = Math.min(mostShare, wanted)
  const plannedL = measurableL(tank.volumeL * fraction)
  return {
    roundId: round.id,
    lateAfterMinutes: 60,
    content: taskContent({
      verb: 'change_water',
      title: titled('give', { amount: litres(plannedL), thing: 'new water', details: [also(`against ${of}`)] }),
      ...waterChangeAmount(plannedL),
      steps: [...matchSteps(tank), ...steps],
      cautions,
      fields: waterChangeFields(tank, plannedL),
      because: [
        ...read,
        computedLink('dilution by a change', null, {
          label: 'to change',
          quantity: share(Number(fraction.toFixed(2))),
        }),
        most,
        settingLink(tank.id, 'volume', { label: `in ${tank.name}`, quantity: litres(tank.volumeL), joins: 'times' }),
      ],
    }),
    context: waterChangeContext(tank, plannedL),
  }
}
