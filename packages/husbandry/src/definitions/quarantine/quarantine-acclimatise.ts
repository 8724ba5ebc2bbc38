import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice } from '../../rule/parameters.ts'

export const quarantineAcclimatiseDefinition = {
  id: 'quarantine-acclimatise',
  title: 'Bring new fish over',
  sentence:
    'Fish that have arrived float for {floatMinutes}, then {additions} equal parts of the tank’s water are added, {apartMinutes} apart, before they go over without their own water.',
  subject: 'tank',
  station: 'quarantine',
  isOnByDefault: true,
  parameters: {
    floatMinutes: {
      type: 'number',
      label: 'afloat, closed',
      unit: 'minutes',
      default: 15,
      minimum: 0,
      maximum: 60,
      source: commonPractice('until bag and tank are equally warm'),
    },
    additions: {
      type: 'number',
      label: 'as often as water is added',
      unit: 'times',
      default: 3,
      minimum: 1,
      maximum: 10,
      source: commonPractice('three equal additions'),
    },
    apartMinutes: {
      type: 'number',
      label: 'from one addition to the next',
      unit: 'minutes',
      default: 10,
      minimum: 1,
      maximum: 60,
      source: commonPractice('half an hour in all: once the bag is open its ammonia turns poisonous'),
    },
  },
} satisfies RuleDefinition
