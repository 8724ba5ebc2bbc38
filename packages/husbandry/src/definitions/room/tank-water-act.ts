import type { RuleDefinition } from '../../rule/definition.ts'
import { commonPractice, mostChangedAtOnce, published } from '../../rule/parameters.ts'

export const tankWaterActDefinition = {
  id: 'tank-water-act',
  title: 'Bring a tank’s ammonia or nitrite down',
  sentence:
    'When the last test of a tank with fish reads {ammoniaMgPerL} of un-ionised ammonia (NH3-N) or {nitriteMgPerL} of nitrite (N) or more, change water until half of that is left, at most {mostShare} at once, and test again; every day while {watchNitriteMgPerL} of nitrite or half of that ammonia is left, until {steadyDays} in a row read no more of it.',
  subject: 'tank',
  station: 'room',
  isOnByDefault: true,
  parameters: {
    ammoniaMgPerL: {
      type: 'number',
      label: 'NH3-N from which to act',
      unit: 'mg_per_L',
      default: 0.04,
      minimum: 0.005,
      maximum: 1,
      source: published(
        'harm from 0.05 mg/L NH3, 0.041 as N: Francis-Floyd & Watson, UF/IFAS FA-16; a tenth of the 96 h LC50 of A. ocellaris juveniles is 0.075 NH3-N: Medeiros 2014, FURG',
      ),
    },
    nitriteMgPerL: {
      type: 'number',
      label: 'nitrite (N) from which to act',
      unit: 'mg_per_L',
      default: 10,
      minimum: 0.1,
      maximum: 50,
      source: published(
        'a tenth of the 96 h LC50 of A. ocellaris juveniles, 108.79 mg/L NO2-N: Medeiros 2014, FURG; rounded down',
      ),
    },
    watchNitriteMgPerL: {
      type: 'number',
      label: 'nitrite (N) to watch',
      unit: 'mg_per_L',
      default: 1,
      minimum: 0.05,
      maximum: 50,
      source: commonPractice('readable nitrite says that the filter does not keep up'),
    },
    steadyDays: {
      type: 'number',
      label: 'in a row read no more',
      unit: 'days',
      default: 3,
      minimum: 2,
      maximum: 30,
      source: commonPractice('three days alike: it stands, and the weekly test will see it rise'),
    },
    mostShare: mostChangedAtOnce,
  },
} satisfies RuleDefinition
