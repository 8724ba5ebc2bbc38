import type { Because } from '@fryward/shared'
import { type AmmoniaTest, assumedPH } from '../../plans/ammonia-plan.ts'
import { computedLink, factLink } from '../../rule/why.ts'

/** What was read of ammonia, and how much of it is poisonous in that water. */
export function ammoniaLinks({ fact, totalMgPerL, nh3MgPerL }: AmmoniaTest): Because[] {
  return [
    factLink(fact, { label: 'total ammonia (as N)', quantity: { value: totalMgPerL, unit: 'mg_per_L' } }),
    fact.data.pH === undefined
      ? computedLink('assumed, for none was read', 'from memory', {
          label: 'taken for the water',
          quantity: { value: assumedPH, unit: 'pH' },
          joins: 'and',
        })
      : factLink(fact, { label: 'read in the water', quantity: { value: fact.data.pH, unit: 'pH' }, joins: 'and' }),
    computedLink('ammonia by pH, warmth and salinity', 'Emerson et al. 1975; Bower & Bidwell 1978 (NBS scale)', {
      label: 'un-ionised, NH3-N',
      quantity: { value: Number(nh3MgPerL.toPrecision(2)), unit: 'mg_per_L' },
    }),
  ]
}
