import type { RuleDefinition } from '../../rule/definition.ts'

export const rotiferEmptyDefinition = {
  id: 'rotifer-empty',
  title: 'Fill a rotifer vessel that stands empty',
  sentence: 'While a rotifer vessel was begun again and nobody has put animals in, ask for them every day.',
  subject: 'culture',
  station: 'live_food',
  isOnByDefault: true,
  parameters: {},
} satisfies RuleDefinition
