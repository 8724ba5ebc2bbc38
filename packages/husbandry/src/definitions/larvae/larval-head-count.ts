import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, fromMemory } from '../../rule/parameters.ts'

export const larvalHeadCountDefinition = {
  id: 'larval-head-count',
  title: 'Count the larvae',
  sentence:
    'Between day {fromDay} and day {toDay} count the larvae of every batch once, and share out those above {mostPerL} a litre, or fewer of those that are born as small fish; young that are still there {againDays} after weaning, every {againDays}.',
  subject: 'larval_batch',
  station: 'larvae',
  isOnByDefault: true,
  parameters: {
    fromDay: {
      type: 'number',
      label: 'old at the count',
      unit: 'days',
      default: 5,
      minimum: 1,
      maximum: 30,
      source: commonPractice('past the losses of the first days, before Artemia is measured by their number'),
    },
    toDay: {
      type: 'number',
      label: 'old at the latest',
      unit: 'days',
      default: 7,
      minimum: 1,
      maximum: 40,
      source: commonPractice('after that they are counted when they move'),
    },
    againDays: {
      type: 'number',
      label: 'from one count of young that wait for grow-out to the next',
      unit: 'days',
      default: 14,
      minimum: 2,
      maximum: 60,
      source: commonPractice('with the gradings of those that have moved'),
    },
    mostPerL: {
      type: 'number',
      label: 'larvae at most',
      unit: 'per_L',
      default: 20,
      minimum: 1,
      maximum: 200,
      source: fromMemory('5-20 larvae per litre: Hoff 1996; Moorhead & Zeng 2010, Rev. Fish. Sci. 18:315-343'),
    },
  },
} satisfies RuleDefinition
