import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, everyDaysParameter } from '../../rule/parameters.ts'

export const roomEquipmentDefinition = {
  id: 'room-equipment',
  title: 'Look over the equipment',
  sentence: 'Look over air, heaters, pumps and plugs every {everyDays} days.',
  subject: 'room',
  station: 'room',
  isOnByDefault: true,
  parameters: {
    everyDays: everyDaysParameter({ default: 1, source: commonPractice('with the first walk of the day') }),
  },
} satisfies RuleDefinition
