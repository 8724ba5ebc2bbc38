import { type DayRound, roundOfInstant } from '../../calendar/rounds.ts'
import { larvalPreyCountDefinition } from '../../definitions/larvae/larval-prey-count.ts'
import { preyFeedRounds } from '../../plans/prey-feed-rounds.ts'
import { defineRule } from '../../rule/rule.ts'
import { factLink, profileLink, settingLink } from '../../rule/why.ts'
import { batchById } from '../../snapshot/by-id.ts'
import { factsOnDay } from '../../state/day-facts.ts'
import { isDoneInRound } from '../../state/done-in-round.ts'
import { preyCounts, preyFeedings } from '../../state/grazing.ts'
import { larvalDiet, tankOf } from '../../state/larval-diet.ts'
import { countField } from '../../task/fields.ts'
import { mL, perMl } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { countOf } from '../../task/values.ts'

// Densest prey tried with fish larvae is 40 per mL (Ma et al. 2013, 2015); ten times that is a slip of the thumb.
const densestPerMl = 400
const likelyPerMl = [0, 40] as const

export const larvalPreyCount = defineRule(larvalPreyCountDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const batch = batchById(snapshot, subject.id)
    const diet = larvalDiet(batch, day.date)
    // A species without a profile is said once, by the top-up.
    if (!diet?.isOnRotifers) return []
    const tank = tankOf(snapshot, batch)
    const rounds = preyFeedRounds(snapshot, tank, day)
    const counted = factsOnDay(snapshot, 'count', { subjectId: batch.id, day }).filter(
      ({ data }) => data.of === 'prey_rotifers',
    )
    const last = preyCounts(snapshot, batch, { prey: 'rotifers', until: day.endsAt }).at(-1)
    const fed = preyFeedings(snapshot, batch, { prey: 'rotifers', until: day.endsAt })
    // Before the very first feed there is nothing in the water to count.
    const isUnfed = !last && fed.length === 0
    // And after a round's feed it would be the feed that is counted.
    const isFedIn = (round: DayRound) =>
      fed.some(({ at }) => at >= day.startsAt && roundOfInstant(rounds, at)?.id === round.id)
    return rounds
      .slice(isUnfed ? 1 : 0)
      .filter((round) => !isDoneInRound(counted, { day, rounds, round }) && !isFedIn(round))
      .map((round) => ({
        roundId: round.id,
        lateAfterMinutes: 60,
        content: taskContent({
          verb: 'count',
          title: titled('count', { thing: 'the rotifers left' }),
          steps: [
            phrase('Take {replicates} of {volume} from different places, before feeding.', {
              replicates: { value: parameters.replicates, unit: 'samples' },
              volume: mL(parameters.sampleMl),
            }),
            phrase('Count every rotifer; leave out larvae that came along, and put them back.'),
            phrase('Look at the larvae: bellies full, swimming, at the surface or at the bottom.'),
          ],
          looks: ['full_bellies', 'hungry_larvae'],
          fields: [
            countField({
              name: 'count',
              label: 'Rotifers left',
              isRequired: true,
              unit: 'per_mL',
              maximum: densestPerMl,
              likely: likelyPerMl,
              usual: last ? Number(last.perMl.toFixed(1)) : null,
              volumeMl: parameters.sampleMl,
              replicates: parameters.replicates,
            }),
          ],
          because: [
            settingLink(batch.id, 'hatch night', { label: 'hatched the night of', text: batch.hatchedOn }),
            profileLink(diet.species.tradeName, diet.species.feeding.rotiferLastDay.source.citation, {
              label: 'old when rotifers end',
              quantity: { value: diet.species.feeding.rotiferLastDay.value ?? 0, unit: 'days' },
              joins: 'and',
            }),
            ...(last
              ? [factLink(last.fact, { label: 'last counted', quantity: perMl(last.perMl), joins: 'and' })]
              : []),
            ...(tank ? [settingLink(tank.id, 'tank', { label: 'in', text: tank.name, joins: 'and' })] : []),
            parameter('sampleMl', 'and'),
          ],
        }),
        context: {},
      }))
  },
  record: ({ values, subjectId }) => {
    const count = countOf(values, 'count')
    return { facts: count ? [{ kind: 'count', subjectId, data: { of: 'prey_rotifers', ...count } }] : [] }
  },
})
