import type { TaskContent } from '@fryward/shared'
import { z } from 'zod'
import type { FactDraft } from '../../facts/fact.ts'
import type { SnapshotTank } from '../../snapshot/room-snapshot.ts'
import { givenAmountField, salinityField, temperatureField } from '../../task/fields.ts'
import { degC, litres, psu } from '../../task/measures.ts'
import { phrase } from '../../task/phrases.ts'
import { given, numberOf, type Values } from '../../task/values.ts'

type Vessel = Pick<SnapshotTank, 'volumeL' | 'salinity' | 'temperatureC'>

const ContextSchema = z.object({ tankId: z.string(), plannedL: z.number() })

/** Fields of any water change, in a tank or a culture: what was changed, and what the new water measured. */
export function waterChangeFields(vessel: Vessel, plannedL: number): TaskContent['fields'] {
  return [
    givenAmountField({
      name: 'amountL',
      label: 'Water changed',
      unit: 'L',
      planned: plannedL,
      maximum: vessel.volumeL,
      step: 0.1,
    }),
    salinityField(vessel.salinity),
    temperatureField(vessel.temperatureC),
  ]
}

/** New water must not be a shock: within 1 in salinity and 1 C. common practice */
export function matchSteps(tank: SnapshotTank): TaskContent['steps'] {
  return [
    phrase('New water at {salinity} and {temperature}, measured, within 1 of both.', {
      salinity: psu(tank.salinity),
      temperature: degC(tank.temperatureC),
    }),
  ]
}

export const waterChangeContext = (tank: SnapshotTank, plannedL: number) => ({ tankId: tank.id, plannedL })
export const waterChangeAmount = (plannedL: number) => ({ amount: litres(plannedL), amountOf: 'new water' })

/** What a water change records, on the tank that it was done in. */
export function waterChangeFacts(context: unknown, values: Values): FactDraft[] {
  const { tankId, plannedL } = ContextSchema.parse(context)
  return [waterChangeFact(tankId, { plannedL, values })]
}

export function waterChangeFact(subjectId: string, about: { plannedL: number; values: Values }): FactDraft {
  const { plannedL, values } = about
  const changedL = numberOf(values, 'amountL') ?? plannedL
  const measured = given({ salinity: numberOf(values, 'salinity'), temperatureC: numberOf(values, 'temperatureC') })
  return { kind: 'water_change', subjectId, data: { removedL: changedL, addedL: changedL, ...measured } }
}
