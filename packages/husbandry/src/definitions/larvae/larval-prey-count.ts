import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice } from '../../rule/parameters.ts'

export const larvalPreyCountDefinition = {
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
} satisfies RuleDefinition
