import { expect, test } from 'vitest'
import { waterGroups } from './water-needs.ts'

// The equation of state of sea water ends at 42: Millero & Poisson 1981 (EOS-80); UNESCO Tech. Pap. Mar. Sci. 36.
test('water saltier than any table is asked for in litres, without a weight of salt that nobody knows', () => {
  const salt = (salinity: number) => {
    const need = { subjectId: 'a', name: 'A1', purpose: 'water change', litres: 10, temperatureC: 25 }
    return waterGroups([{ ...need, salinity }], { dryShare: 1 }).map(({ litres, saltG }) => [litres, saltG === null])
  }
  expect([salt(0), salt(42), salt(42.1)]).toEqual([[[10, false]], [[10, false]], [[10, true]]])
})
