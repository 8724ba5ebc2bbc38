import type { RuleDefinition } from '../../rule/definition.ts'
import { fromMemory, mostChangedAtOnce, published } from '../../rule/parameters.ts'

export const larvalAmmoniaActDefinition = {
  id: 'larval-ammonia-act',
  title: 'Bring ammonia down',
  sentence:
    'When the last test reads {actMgPerL} of un-ionised ammonia (NH3-N) or more, change water until {watchMgPerL} is left, at most {mostShare} at once. While more than that is read where no filter runs, larvae old enough for Artemia get a ripe sponge.',
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
      source: published(
        'a tenth of the 24 h LC50 of S. aurata larvae of 12 days, 0.24 mg/L NH3, is 0.020 as N: Parra & Yúfera 1999, Aquac. Res. 30',
      ),
    },
    mostShare: mostChangedAtOnce,
  },
} satisfies RuleDefinition
