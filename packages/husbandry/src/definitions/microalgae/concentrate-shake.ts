import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, everyDaysParameter } from '../../rule/parameters.ts'

export const concentrateShakeDefinition = {
  id: 'concentrate-shake',
  title: 'Shake the bottles',
  sentence:
    'Turn over every bottle of concentrate that nothing is fed from, every {everyDays} days, and keep it cold. A bottle in use is shaken with each feed.',
  subject: 'room',
  station: 'microalgae',
  isOnByDefault: true,
  parameters: {
    everyDays: everyDaysParameter({
      default: 1,
      source: commonPractice('cells settle and clump in a bottle that stands'),
    }),
  },
} satisfies RuleDefinition
