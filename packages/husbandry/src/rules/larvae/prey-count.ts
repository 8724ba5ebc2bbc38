import { commonPractice } from '../../engine/parameters.ts'
import { defineRule, factLink, profileLink, settingLink } from '../../engine/rule.ts'
import type { RoomSnapshot, SnapshotBatch } from '../../snapshot.ts'
import { factsOnDay } from '../../state/day-facts.ts'
import { preyCounts, preyFeedings } from '../../state/grazing.ts'
import { larvalDiet, tankOf } from '../../state/larval-diet.ts'
import { isDoneInRound } from '../done.ts'
import { countField } from '../fields.ts'
import { mL, perMl } from '../measures.ts'
import { phrase, taskContent } from '../phrases.ts'
import { preyFeedRounds } from '../plans/top-up-parameters.ts'
import { countOf } from '../values.ts'

// Densest prey tried with fish larvae is 40 per mL (Ma et al. 2013, 2015); ten times that is a slip of the thumb.
const densestPerMl = 400
const likelyPerMl = [0, 40] as const

/** The batch with this id; throws when the snapshot does not hold it. */
export function batchById(snapshot: RoomSnapshot, id: string): SnapshotBatch {
  const batch = snapshot.batches.find((each) => each.id === id)
  if (!batch) throw new Error(`The snapshot has no larval batch ${id}`)
  return batch
}

export const larvalPreyCount = defineRule({
  id: 'larval-prey-count',
  title: 'Count the prey left',
  sentence:
    'Before each feed, count the rotifers left in the larvae’s water in {replicates} samples of {sampleMl}, while they eat rotifers.',
  subject: 'larval_batch',
  station: 'larvae',
  isOnByDefault: true,
  parameters: {
    replicates: {
      type: 'number',
      label: 'before each feed',
      unit: 'samples',
      default: 3,
      minimum: 1,
      maximum: 10,
      source: commonPractice('three samples, as for the culture'),
    },
    sampleMl: {
      type: 'number',
      label: 'a sample',
      unit: 'mL',
      default: 10,
      minimum: 1,
      maximum: 100,
      source: commonPractice('at 5-10 per mL, three samples of 10 mL hold the hundred animals of a good count'),
    },
  },
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const batch = batchById(snapshot, subject.id)
    const diet = larvalDiet(batch, day.date)
    // A species without a profile is said once, by the top-up.
    if (!diet?.isOnRotifers) return []
    const rounds = preyFeedRounds(snapshot, day)
    const counted = factsOnDay(snapshot, 'count', { subjectId: batch.id, day }).filter(
      ({ data }) => data.of === 'prey_rotifers',
    )
    const last = preyCounts(snapshot, batch, { prey: 'rotifers', until: day.endsAt }).at(-1)
    const tank = tankOf(snapshot, batch)
    // Before the very first feed there is nothing in the water to count.
    const isUnfed = !last && preyFeedings(snapshot, batch, { prey: 'rotifers', until: day.endsAt }).length === 0
    return rounds
      .slice(isUnfed ? 1 : 0)
      .filter((round) => !isDoneInRound(counted, { day, rounds, round }))
      .map((round) => ({
        roundId: round.id,
        lateAfterMinutes: 60,
        content: taskContent({
          verb: 'count',
          title: phrase('Count the rotifers left'),
          steps: [
            phrase('Take {replicates} of {volume} from different places, before feeding.', {
              replicates: { value: parameters.replicates, unit: 'samples' },
              volume: mL(parameters.sampleMl),
            }),
            phrase('Count every rotifer; leave out larvae that came along, and put them back.'),
            phrase('Look at the larvae: bellies full, swimming, at the surface or at the bottom.'),
          ],
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
            profileLink(diet.species.id, diet.species.feeding.rotiferLastDay.source.citation, {
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
