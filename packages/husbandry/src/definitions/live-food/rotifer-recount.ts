import type { RuleDefinition } from '../../rule/definition.ts'

export const rotiferRecountDefinition = {
  id: 'rotifer-recount',
  title: 'Count again',
  sentence:
    'When a count finds two fifths of a rotifer culture gone beyond what was taken, or hardly an egg on a few females, count again and look for signs the same day; until then nothing is thinned.',
  subject: 'culture',
  station: 'live_food',
  isOnByDefault: true,
  parameters: {},
} satisfies RuleDefinition
