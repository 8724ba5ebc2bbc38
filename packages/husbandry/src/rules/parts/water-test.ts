import type { Phrase, TaskField } from '@fryward/shared'
import type { FactDraft } from '../../facts/fact.ts'
import type { SnapshotTank } from '../../snapshot/room-snapshot.ts'
import { numberField, salinityField, temperatureField } from '../../task/fields.ts'
import { phrase } from '../../task/phrases.ts'
import { given, numberOf, type Values } from '../../task/values.ts'

export const waterTestSteps: Phrase[] = [
  phrase('Before feeding, and before any change of water. What you did not measure stays empty.'),
  phrase(
    'Ammonia, nitrite and nitrate as nitrogen (N): the kit’s card says what it reads. What is harmful asks for water at once.',
  ),
]

const mgPerL = { unit: 'mg_per_L', minimum: 0 } as const

/** What is measured in a tank with grown fish; its temperature at the least. */
export function waterTestFields(tank: SnapshotTank): TaskField[] {
  return [
    temperatureField(tank.temperatureC, true),
    salinityField(tank.salinity),
    numberField({ name: 'pH', label: 'pH', unit: 'pH', minimum: 4, maximum: 11, likely: [7.6, 8.6], step: 0.1 }),
    numberField({
      ...mgPerL,
      name: 'totalAmmoniaNMgPerL',
      label: 'Total ammonia (as N)',
      maximum: 100,
      likely: [0, 1],
      step: 0.05,
    }),
    numberField({
      ...mgPerL,
      name: 'nitriteNMgPerL',
      label: 'Nitrite (as N)',
      maximum: 100,
      likely: [0, 1],
      step: 0.05,
    }),
    numberField({ ...mgPerL, name: 'nitrateNMgPerL', label: 'Nitrate (as N)', maximum: 1000, likely: [0, 50] }),
  ]
}

/** What was measured of any water and nothing else; no fact where nothing was. */
export function waterTestFacts(subjectId: string, values: Values): FactDraft[] {
  const data = given({
    temperatureC: numberOf(values, 'temperatureC'),
    salinity: numberOf(values, 'salinity'),
    pH: numberOf(values, 'pH'),
    totalAmmoniaNMgPerL: numberOf(values, 'totalAmmoniaNMgPerL'),
    nitriteNMgPerL: numberOf(values, 'nitriteNMgPerL'),
    nitrateNMgPerL: numberOf(values, 'nitrateNMgPerL'),
    oxygenMgPerL: numberOf(values, 'oxygenMgPerL'),
  })
  return Object.keys(data).length > 0 ? [{ kind: 'water_test', subjectId, data }] : []
}
