import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, everyDaysParameter } from '../../rule/parameters.ts'

export const roomBatteryAirDefinition = {
  id: 'room-battery-air',
  title: 'Test the battery air',
  sentence: 'Test every battery air pump every {everyDays} days with the mains unplugged.',
  subject: 'room',
  station: 'room',
  isOnByDefault: true,
  parameters: { everyDays: everyDaysParameter({ default: 30, source: commonPractice('tested monthly') }) },
} satisfies RuleDefinition
