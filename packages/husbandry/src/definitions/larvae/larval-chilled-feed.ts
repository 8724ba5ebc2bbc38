import type { RuleDefinition } from '../../rule/definition.ts'

export const larvalChilledFeedDefinition = {
  id: 'larval-chilled-feed',
  title: 'Feed from the chilled reserve',
  sentence:
    'Where it was chosen on the plan of the food that the chilled reserve gives what no culture can, feed what the plan takes of it, the oldest jar first.',
  subject: 'larval_batch',
  station: 'larvae',
  isOnByDefault: true,
  parameters: {},
} satisfies RuleDefinition
