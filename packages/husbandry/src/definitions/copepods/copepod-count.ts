import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, fromMemory } from '../../rule/parameters.ts'

export const copepodCountDefinition = {
  id: 'copepod-count',
  title: 'Count the copepods',
  sentence:
    'Count every copepod culture, adults and nauplii apart, in {replicates} samples of {sampleMl} every {everyDays} days; daily while small larvae wait for one that was too thin to give any.',
  subject: 'culture',
  station: 'live_food',
  isOnByDefault: true,
  parameters: {
    everyDays: {
      type: 'number',
      label: 'from one count to the next',
      unit: 'days',
      default: 3,
      minimum: 1,
      maximum: 14,
      source: commonPractice('slower than rotifers: a generation takes a week or more'),
    },
    replicates: {
      type: 'number',
      label: 'from different places',
      unit: 'samples',
      default: 3,
      minimum: 1,
      maximum: 10,
      source: commonPractice('as rotifers are counted'),
    },
    sampleMl: {
      type: 'number',
      label: 'in each sample',
      unit: 'mL',
      default: 10,
      minimum: 1,
      maximum: 500,
      source: fromMemory('thin cultures want larger samples than rotifers'),
    },
  },
} satisfies RuleDefinition
