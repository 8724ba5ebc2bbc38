import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, published } from '../../rule/parameters.ts'

export const concentrateUseByDefinition = {
  id: 'concentrate-use-by',
  title: 'Bottles past their time',
  sentence: 'Say so {warnDays} before a bottle’s use-by date, and when one has been open for {openDays}.',
  subject: 'room',
  station: 'microalgae',
  isOnByDefault: true,
  parameters: {
    warnDays: {
      type: 'number',
      label: 'before its date',
      unit: 'days',
      default: 7,
      minimum: 0,
      maximum: 60,
      source: commonPractice('time to buy the next'),
    },
    openDays: {
      type: 'number',
      label: 'open',
      unit: 'days',
      default: 60,
      minimum: 7,
      maximum: 365,
      source: published(
        'as good as fresh after a month at 3 °C (Yamasaki, Tanabe & Hirata 1989, Mem. Fac. Fish. Kagoshima Univ. 38:77-82); twice that, by practice',
      ),
    },
  },
} satisfies RuleDefinition
