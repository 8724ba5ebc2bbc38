import type { Because } from '@fryward/shared'
import { type AmmoniaTest, assumedPH } from '../../plans/ammonia-plan.ts'
import { computedLink, factLink } from '../../rule/why.ts'
import { readBy } from '../../state/water-reads.ts'

/** What was read of ammonia, and how much of it is poisonous in that water. */
export function ammoniaLinks(test: AmmoniaTest): Because[] {
  const { fact, totalMgPerL, nh3MgPerL } = test
  return [
    factLink(fact, { label: 'total ammonia (as N)', quantity: { value: totalMgPerL, unit: 'mg_per_L' } }),
    phLink(test),
    ...warmthLinks(test),
    computedLink('ammonia by pH, warmth and salinity', 'Emerson et al. 1975; Bower & Bidwell 1978 (NBS scale)', {
      label: 'un-ionised, NH3-N',
      quantity: { value: Number(nh3MgPerL.toPrecision(2)), unit: 'mg_per_L' },
    }),
  ]
}

function phLink({ fact, beside: { pH } }: AmmoniaTest): Because {
  const and = { joins: 'and' } as const
  if (fact.data.pH !== undefined)
    return factLink(fact, { label: 'read in the water', quantity: { value: fact.data.pH, unit: 'pH' }, ...and })
  if (pH) return factLink(pH.fact, { label: `read ${readBy(pH)}`, quantity: { value: pH.value, unit: 'pH' }, ...and })
  return computedLink('assumed, for none was read', 'from memory', {
    ...{ label: 'taken for the water', quantity: { value: assumedPH, unit: 'pH' }, ...and },
  })
}

function warmthLinks({ beside: { temperatureC } }: AmmoniaTest): Because[] {
  if (!temperatureC) return []
  const quantity = { value: temperatureC.value, unit: 'degC' } as const
  return [factLink(temperatureC.fact, { label: `read ${readBy(temperatureC)}`, quantity, joins: 'and' })]
}
