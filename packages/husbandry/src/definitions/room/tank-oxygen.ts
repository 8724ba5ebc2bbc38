import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice } from '../../rule/parameters.ts'

export const tankOxygenDefinition = {
  id: 'tank-oxygen',
  title: 'Bring a tank’s oxygen up',
  sentence:
    'When the last oxygen read in a tank with fish or larvae, by gauge or by hand, is under {leastShare} of what its water holds at its warmth and salinity, look for what stands and turn up the air.',
  subject: 'tank',
  station: 'room',
  isOnByDefault: true,
  parameters: {
    leastShare: {
      type: 'number',
      label: 'of saturation at the least',
      unit: 'share',
      default: 0.8,
      minimum: 0.3,
      maximum: 0.95,
      source: commonPractice('moving, aired water stays over 80 % of saturation; under it something stands or rots'),
    },
  },
} satisfies RuleDefinition
