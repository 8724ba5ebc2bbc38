import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, fromMemory } from '../../rule/parameters.ts'

export const rotiferEnrichDefinition = {
  id: 'rotifer-enrich',
  title: 'Enrich the rotifers for larvae',
  sentence:
    'On every day that a culture feeds larvae, enrich what is set aside for their later feeds for {hours} with {emulsionGPerMillion} of emulsion to each million.',
  subject: 'culture',
  station: 'live_food',
  // A mild emulsion was enough for A. clarkii, a strong one lowered survival: a room decides with its emulsion in hand.
  isOnByDefault: false,
  parameters: {
    hours: {
      type: 'number',
      label: 'of enriching',
      unit: 'hours',
      default: 4,
      minimum: 1,
      maximum: 24,
      source: commonPractice('from the morning’s harvest to the midday feed'),
    },
    emulsionGPerMillion: {
      type: 'number',
      label: 'emulsion to each million',
      unit: 'g',
      default: 0.1,
      minimum: 0.01,
      maximum: 2,
      source: fromMemory(
        '0.05 g/L at 500 rotifers per mL: FAO Fish. Tech. Pap. 361, sect. 3.5; an emulsion of 6 % DHA was enough for A. clarkii larvae, one of 36 % lowered survival (Persian Gulf Univ. group)',
      ),
    },
  },
} satisfies RuleDefinition
