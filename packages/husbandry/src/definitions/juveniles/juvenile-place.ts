import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, fromMemory } from '../../rule/parameters.ts'

export const juvenilePlaceDefinition = {
  id: 'juvenile-place',
  title: 'Place grown juveniles',
  sentence:
    'Every {everyDays} days, once a group is about {fromMm} long, or weighs what a clownfish of that length does, and eats what it is weaned to, look which fish can be placed: they go unfed for {unfedDays}, are counted, packed and written down.',
  subject: 'juvenile_group',
  station: 'juveniles',
  isOnByDefault: true,
  parameters: {
    fromMm: {
      type: 'number',
      label: 'long at the least',
      unit: 'mm',
      default: 25,
      minimum: 10,
      maximum: 100,
      source: fromMemory('placed at 2.5-4 cm, A. ocellaris: extension and textbook range'),
    },
    unfedDays: {
      type: 'number',
      label: 'unfed before they travel',
      unit: 'days',
      default: 1,
      minimum: 0,
      maximum: 3,
      source: commonPractice('a day, so that they do not foul their bag'),
    },
    everyDays: {
      type: 'number',
      label: 'from one look to the next',
      unit: 'days',
      default: 14,
      minimum: 1,
      maximum: 120,
      source: commonPractice('with every other grading'),
    },
  },
} satisfies RuleDefinition
