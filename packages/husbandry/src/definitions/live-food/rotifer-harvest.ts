import { HARVEST_PRACTICE } from '@fryward/live-feed'
import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice } from '../../rule/parameters.ts'

export const rotiferHarvestDefinition = {
  id: 'rotifer-harvest',
  title: 'Thin the rotifers',
  sentence:
    'From {firstHarvestAgeDays} days and {firstHarvestPerMl} on, thin a culture each day to the density at which it gives most over weeks by its own counts, {dailyShare} at most while these are few, never more than {mostShare} and not under {floorPerMl}; nothing from a falling one; counted within {countedWithinDays}. The rest goes to {restGoesTo}. A backup is left alone.',
  subject: 'culture',
  station: 'live_food',
  isOnByDefault: true,
  parameters: {
    firstHarvestAgeDays: {
      type: 'number',
      label: 'youngest age for a first harvest',
      unit: 'days',
      default: HARVEST_PRACTICE.firstHarvestAgeDays,
      minimum: 1,
      maximum: 30,
      source: commonPractice(),
    },
    firstHarvestPerMl: {
      type: 'number',
      label: 'density for a first harvest',
      unit: 'per_mL',
      default: HARVEST_PRACTICE.firstHarvestPerMl,
      minimum: 20,
      maximum: 5000,
      source: commonPractice(),
    },
    dailyShare: {
      type: 'number',
      label: 'at most while its counts are few',
      unit: 'share',
      default: HARVEST_PRACTICE.usualFraction,
      minimum: 0.02,
      maximum: 0.5,
      source: commonPractice('about a fifth of the volume a day'),
    },
    mostShare: {
      type: 'number',
      label: 'at most',
      unit: 'share',
      default: HARVEST_PRACTICE.maximumFraction,
      minimum: 0.05,
      maximum: 0.5,
      source: commonPractice('never more than half'),
    },
    floorPerMl: {
      type: 'number',
      label: 'density not to go under',
      unit: 'per_mL',
      default: 50,
      minimum: 0,
      maximum: 5000,
      source: commonPractice('the thin end of an inoculum, 50-150 per mL (ICAR e-course on rotifers), as a floor'),
    },
    countedWithinDays: {
      type: 'number',
      label: 'since the count at most',
      unit: 'days',
      default: 2,
      minimum: 0,
      maximum: 14,
      source: commonPractice('no harvest on an old count'),
    },
    restGoesTo: {
      type: 'choice',
      label: 'what nobody eats goes to',
      choices: ['drain', 'other_fish', 'chilled_reserve'] as const,
      default: 'other_fish' as const,
      source: commonPractice('surplus feeds other fish'),
    },
  },
} satisfies RuleDefinition
