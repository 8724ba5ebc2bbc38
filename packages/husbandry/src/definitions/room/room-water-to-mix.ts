import type { RuleDefinition } from '../../rule/definition.ts'
import { assumption, commonPractice } from '../../rule/parameters.ts'

export const roomWaterToMixDefinition = {
  id: 'room-water-to-mix',
  title: 'Mix water for tomorrow',
  sentence:
    'By tonight mix what tomorrow will use, and {spareShare} more, in the salinity of where it goes; a gram of the salt holds {dryShare} dry salt.',
  subject: 'room',
  station: 'room',
  isOnByDefault: true,
  parameters: {
    spareShare: {
      type: 'number',
      label: 'spare',
      unit: 'share',
      default: 0.1,
      minimum: 0,
      maximum: 1,
      source: commonPractice('a tenth over, for rinsing and spilling'),
    },
    dryShare: {
      type: 'number',
      label: 'dry salt in a gram of the mix',
      unit: 'share',
      default: 1,
      minimum: 0.5,
      maximum: 1,
      source: assumption('taken as dry; weigh a test batch of the bag in use, for most hold bound water'),
    },
  },
} satisfies RuleDefinition
