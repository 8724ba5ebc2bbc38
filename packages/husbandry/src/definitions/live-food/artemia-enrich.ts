import type { RuleDefinition } from '../../rule/definition.ts'
import { fromMemory, published } from '../../rule/parameters.ts'

export const artemiaEnrichDefinition = {
  id: 'artemia-enrich',
  title: 'Enrich the nauplii',
  sentence:
    'Enrich nauplii {hoursAfterHatch} after their harvest with {emulsionGPerL} of emulsion, for larvae past their first Artemia.',
  subject: 'culture',
  station: 'live_food',
  isOnByDefault: false,
  parameters: {
    hoursAfterHatch: {
      type: 'number',
      label: 'after the harvest',
      unit: 'hours',
      default: 8,
      minimum: 0,
      maximum: 24,
      source: published('instar II, about 8 h after hatching: Lavens & Sorgeloos 1996, FAO 361, sect. 4.1'),
    },
    emulsionGPerL: {
      type: 'number',
      label: 'emulsion for each litre',
      unit: 'g',
      default: 0.3,
      minimum: 0.05,
      maximum: 1,
      source: fromMemory('0.3 g/L every 12 h: FAO Fish. Tech. Pap. 361, sect. 4.3.4'),
    },
  },
} satisfies RuleDefinition
