import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, published } from '../../rule/parameters.ts'

export const larvalWaterChangeDefinition = {
  id: 'larval-water-change',
  title: 'Change the larvae’s water',
  sentence:
    'From day {fromDay} change {firstShare} of the larvae’s water a day, {moreEachDay} more each day up to {mostShare}, matched in salinity and temperature; up to that on any day while the last test reads more ammonia than is to be left.',
  subject: 'larval_batch',
  station: 'larvae',
  isOnByDefault: true,
  parameters: {
    fromDay: {
      type: 'number',
      label: 'old at the first change',
      unit: 'days',
      default: 3,
      minimum: 0,
      maximum: 30,
      source: commonPractice('left alone for the first days'),
    },
    firstShare: {
      type: 'number',
      label: 'at first',
      unit: 'share',
      default: 0.2,
      minimum: 0.02,
      maximum: 1,
      source: published('20 % a day rising to 100 % with age, A. clarkii larvae (methods of a larval experiment)'),
    },
    moreEachDay: {
      type: 'number',
      label: 'more each day',
      unit: 'share',
      default: 0.02,
      minimum: 0,
      maximum: 0.2,
      source: commonPractice('slower than published, to what a small room mixes'),
    },
    mostShare: {
      type: 'number',
      label: 'at most',
      unit: 'share',
      default: 0.5,
      minimum: 0.05,
      maximum: 1,
      source: commonPractice('half a day by hand'),
    },
  },
} satisfies RuleDefinition
