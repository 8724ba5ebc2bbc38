import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, fromMemory, published } from '../../rule/parameters.ts'

export const larvalArtemiaFeedDefinition = {
  id: 'larval-artemia-feed',
  title: 'Feed Artemia',
  sentence:
    'From the species’ first Artemia day give newly hatched nauplii in {feedsPerDay} feeds a day, the last {hoursBeforeDark} before dark: by their number, {perLarvaPerDay} for each a day at 20 days of age and fewer before, or more where looks before the feeds say that they eat more or rotifers have just ended and what they ate of those has to be made good, rising over {stretchDays} but for those whose first food they are, never above {mostPerMl}; less by what was seen left. Once nearly all take what they are weaned to, fewer over {taperDays} and then none.',
  subject: 'larval_batch',
  station: 'larvae',
  isOnByDefault: true,
  parameters: {
    feedsPerDay: {
      type: 'number',
      label: 'a day',
      unit: 'feeds',
      default: 3,
      minimum: 1,
      maximum: 8,
      source: commonPractice(
        'three by hand where the rounds allow it; 4 a day in A. clarkii larvae (methods of a larval experiment)',
      ),
    },
    hoursBeforeDark: {
      type: 'number',
      label: 'before dark at the last feed',
      unit: 'hours',
      default: 2,
      minimum: 0,
      maximum: 8,
      source: commonPractice('time to eat them: what is left in the dark grows out of reach and fouls the water'),
    },
    perLarvaPerDay: {
      type: 'number',
      label: 'for a larva of 20 days, a day',
      unit: 'animals',
      default: 500,
      minimum: 10,
      maximum: 5000,
      source: published(
        '500-600 a larva a day at 20 days, yellowtail kingfish, a larger larva: Ma, Qin, Hutchinson & Chen 2013, Aquac. Nutr. 19:523-534; none is known of clownfish',
      ),
    },
    taperDays: {
      type: 'number',
      label: 'from nearly all weaned to no Artemia',
      unit: 'days',
      default: 3,
      minimum: 1,
      maximum: 21,
      source: published('weaning over 3 days to 2 weeks: Treece & Davis 2000, SRAC Publication 701'),
    },
    mostPerMl: {
      type: 'number',
      label: 'at most',
      unit: 'per_mL',
      default: 3,
      minimum: 0.1,
      maximum: 10,
      source: fromMemory('0.5-3 per mL: textbooks and reviews'),
    },
    stretchDays: {
      type: 'number',
      label: 'from the first to the full amount',
      unit: 'days',
      default: 3,
      minimum: 0,
      maximum: 14,
      source: published('rotifers and Artemia together from day 5 without loss: Murray et al. 2025, Fishes 10(9):461'),
    },
  },
} satisfies RuleDefinition
