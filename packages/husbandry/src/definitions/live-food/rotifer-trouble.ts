import type { RuleDefinition } from '../../rule/definition.ts'
import { signHoursParameter } from '../sign-hours.ts'

export const rotiferTroubleDefinition = {
  id: 'rotifer-trouble',
  title: 'See to a culture in trouble',
  sentence:
    'When signs of the last {signHours}, eggs, counts or the water say that a rotifer culture is in trouble, look again and act before its next feed.',
  subject: 'culture',
  station: 'live_food',
  isOnByDefault: true,
  parameters: {
    signHours: signHoursParameter,
  },
} satisfies RuleDefinition
