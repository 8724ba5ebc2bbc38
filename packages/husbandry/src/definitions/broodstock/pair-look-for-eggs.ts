import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice } from '../../rule/parameters.ts'

export const pairLookForEggsDefinition = {
  id: 'pair-look-for-eggs',
  title: 'Look for eggs',
  sentence:
    'Look for eggs every day in a pair’s window, by its own intervals; outside the window, or before its first spawning, every {everyDays} days. Not while it has eggs or rests. With the day’s last feed in the light it is part of that. Eggs that float are looked for after dark or the next morning, while a larval tank and grow-out have room for them and the room’s copepods enough nauplii.',
  subject: 'pair',
  station: 'broodstock',
  isOnByDefault: true,
  parameters: {
    everyDays: {
      type: 'number',
      label: 'from one look to the next, outside the window',
      unit: 'days',
      default: 3,
      minimum: 1,
      maximum: 30,
      source: commonPractice(),
    },
  },
} satisfies RuleDefinition
