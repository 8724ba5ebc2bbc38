import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, fromMemory, mostChangedAtOnce } from '../../rule/parameters.ts'

export const larvalAmmoniaActDefinition = {
  id: 'larval-ammonia-act',
  title: 'Bring ammonia down',
  sentence:
    'When the last test reads {actMgPerL} of un-ionised ammonia (NH3-N) or more, change water until {watchMgPerL} is left, at most {mostShare} at once.',
  subject: 'larval_batch',
  station: 'larvae',
  isOnByDefault: true,
  parameters: {
    watchMgPerL: {
      type: 'number',
      label: 'NH3-N to come down to',
      unit: 'mg_per_L',
      default: 0.01,
      minimum: 0.001,
      maximum: 0.5,
      source: fromMemory('NH3-N under 0.01-0.02 for marine larvae: house limits after textbooks'),
    },
    actMgPerL: {
      type: 'number',
      label: 'NH3-N from which to act',
      unit: 'mg_per_L',
      default: 0.02,
      minimum: 0.002,
      maximum: 1,
      source: commonPractice('act at 0.02 NH3-N; harm from 0.05 mg/L NH3: Francis-Floyd & Watson, UF/IFAS FA-16'),
    },
    mostShare: mostChangedAtOnce,
  },
} satisfies RuleDefinition
