import type { RuleDefinition } from '../../rule/definition.ts'
import { published } from '../../rule/parameters.ts'

export const chilledReserveDefinition = {
  id: 'chilled-reserve',
  title: 'Renew the chilled reserve',
  sentence: 'Discard chilled rotifers {oldestDays} days after their harvest: about half are dead by then.',
  subject: 'culture',
  station: 'live_food',
  isOnByDefault: true,
  parameters: {
    oldestDays: {
      type: 'number',
      label: 'at most in the cold',
      unit: 'days',
      default: 14,
      minimum: 1,
      maximum: 60,
      source: published(
        'about 50 % alive after 14 days at 4 °C: Assavaaree, Hagiwara, Ide, Maruyama & Lubzens 2001, Aquac. Res. 32:29-39',
      ),
    },
  },
} satisfies RuleDefinition
