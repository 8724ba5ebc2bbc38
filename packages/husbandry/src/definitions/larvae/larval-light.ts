import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, fromMemory } from '../../rule/parameters.ts'

export const larvalLightDefinition = {
  id: 'larval-light',
  title: 'Check the larvae’s light',
  sentence:
    'Check every {everyDays} days, with the look at the larvae where there is one, that they have 1,000-2,000 lux at the surface and the hours of light of their tank: {hours} where none are set.',
  subject: 'larval_batch',
  station: 'larvae',
  isOnByDefault: true,
  parameters: {
    everyDays: {
      type: 'number',
      label: 'from one time to the next',
      unit: 'days',
      default: 7,
      minimum: 1,
      maximum: 366,
      source: commonPractice(
        'weekly where a timer runs it; 1,000-2,000 lux for A. clarkii larvae (methods of a larval experiment)',
      ),
    },
    hours: {
      type: 'number',
      label: 'of light a day, where a tank has none of its own',
      unit: 'hours',
      default: 16,
      minimum: 1,
      maximum: 24,
      source: fromMemory(
        '16 h of light faster than 12 or 24 in A. melanopus: Arvedlund, McCormick & Ainsworth 2000, Naga 23(2):18-23',
      ),
    },
  },
} satisfies RuleDefinition
