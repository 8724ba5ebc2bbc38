import { DEFAULT_SIEVING_LOSS } from '@fryward/live-feed'
import type { RuleDefinition } from '../../rule/definition.ts'
import { assumption, commonPractice, fromMemory, published } from '../../rule/parameters.ts'
import { cite } from '../../species/citations.ts'

export const larvalPreyTopUpDefinition = {
  id: 'larval-prey-top-up',
  title: 'Top up the prey',
  sentence:
    'In {feedsPerDay} feeds a day, in the light as far as the rounds allow, keep {targetPerMl} rotifers in the larvae’s water, topping up when fewer than {refillUnderPerMl} would be left, never above {mostPerMl}, or {mostWhenEatenPerMl} where counts say that they eat so many before the next feed; {sievingLoss} is lost in sieving.',
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
      source: published(
        'eaten at most 1,900 a larva a day and supplied in 3 feeds; at least 2: Treece & Davis 2000, SRAC Publication 701',
      ),
    },
    targetPerMl: {
      type: 'number',
      label: 'rotifers to keep',
      unit: 'per_mL',
      default: 10,
      minimum: 0.5,
      maximum: 40,
      source: commonPractice('5-10 per mL as used for A. clarkii larvae (methods of a larval experiment), upper end'),
    },
    refillUnderPerMl: {
      type: 'number',
      label: 'top up when under',
      unit: 'per_mL',
      default: 5,
      minimum: 0,
      maximum: 40,
      source: commonPractice('3 per mL in red drum: Treece & Davis 2000, SRAC Publication 701'),
    },
    mostPerMl: {
      type: 'number',
      label: 'at most',
      unit: 'per_mL',
      default: 15,
      minimum: 1,
      maximum: 60,
      source: fromMemory('usual target 5-15 per mL: Hoff 1996; Olivotto et al. 2011'),
    },
    mostWhenEatenPerMl: {
      type: 'number',
      label: 'at most, where they eat it before the next feed',
      unit: 'per_mL',
      default: 20,
      minimum: 1,
      maximum: 60,
      source: assumption(`10, 15 and 20 per mL alike on days 0-6: ${cite.majoris2018}; borrowed`),
    },
    sievingLoss: {
      type: 'number',
      label: 'lost in sieving',
      unit: 'share',
      default: DEFAULT_SIEVING_LOSS,
      minimum: 0,
      maximum: 0.5,
      source: published('Attramadal & Sandvand, rotifer cultivating method (Fish Farming Technology, Balkema)'),
    },
  },
} satisfies RuleDefinition
