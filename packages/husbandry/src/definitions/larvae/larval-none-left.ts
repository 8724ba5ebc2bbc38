import type { RuleDefinition } from '../../rule/definition.ts'

export const larvalNoneLeftDefinition = {
  id: 'larval-none-left',
  title: 'Look whether larvae are left',
  sentence:
    'When by the book a batch has no larvae left, nothing more is asked for it; look into its tank once, and write down how many are there.',
  subject: 'tank',
  station: 'larvae',
  isOnByDefault: true,
  parameters: {},
} satisfies RuleDefinition
