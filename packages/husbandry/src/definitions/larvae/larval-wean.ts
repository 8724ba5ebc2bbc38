import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice } from '../../rule/parameters.ts'

export const larvalWeanDefinition = {
  id: 'larval-wean',
  title: 'Wean them from live food',
  sentence:
    'From the species’ weaning day offer dry food, or frozen food to those that take no other, in {feedsPerDay} feeds a day beside the live food, until it is all they eat; with an Artemia feed it is part of that. Those that eat nothing else and wait for room in grow-out are fed as juveniles are.',
  subject: 'larval_batch',
  station: 'larvae',
  isOnByDefault: true,
  parameters: {
    feedsPerDay: {
      type: 'number',
      label: 'a day',
      unit: 'feeds',
      default: 2,
      minimum: 1,
      maximum: 8,
      source: commonPractice('two beside the live food; more for those who are there'),
    },
  },
} satisfies RuleDefinition
