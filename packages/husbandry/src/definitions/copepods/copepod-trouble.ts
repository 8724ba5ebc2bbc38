import type { RuleDefinition } from '../../rule/definition.ts'
import { signHoursParameter } from '../sign-hours.ts'

export const copepodTroubleDefinition = {
  id: 'copepod-trouble',
  title: 'See to copepods in trouble',
  sentence:
    'When signs of the last {signHours} or two falling counts say that a copepod culture is in trouble, look again and act before its next feed.',
  subject: 'culture',
  station: 'live_food',
  isOnByDefault: true,
  parameters: { signHours: signHoursParameter },
} satisfies RuleDefinition
