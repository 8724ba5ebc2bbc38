import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, fromMemory } from '../../rule/parameters.ts'

export const larvalGreenWaterDefinition = {
  id: 'larval-green-water',
  title: 'Green the larvae’s water',
  sentence:
    'While larvae eat rotifers keep {cellsPerMl} algal cells in their water: all of it at first, then each morning the {lostShare} that a day takes away.',
  subject: 'larval_batch',
  station: 'larvae',
  isOnByDefault: true,
  parameters: {
    cellsPerMl: {
      type: 'number',
      label: 'to keep',
      unit: 'cells_per_mL',
      default: 200_000,
      minimum: 10_000,
      maximum: 2_000_000,
      source: fromMemory('100,000 to 500,000 Nannochloropsis per mL: Moorhead & Zeng 2010, Rev. Fish. Sci. 18:315-343'),
    },
    lostShare: {
      type: 'number',
      label: 'gone in a day',
      unit: 'share',
      default: 0.5,
      minimum: 0.05,
      maximum: 1,
      source: commonPractice('eaten, settled and changed away: about half a day'),
    },
  },
} satisfies RuleDefinition
