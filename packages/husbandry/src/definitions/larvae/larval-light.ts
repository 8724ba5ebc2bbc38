import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice } from '../../rule/parameters.ts'

export const larvalLightDefinition = {
  id: 'larval-light',
  title: 'Check the larvae’s light',
  sentence:
    'Check every {everyDays} days, with the look at the larvae where there is one, that they have 1,000-2,000 lux at the surface and 16 hours of light.',
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
  },
} satisfies RuleDefinition
