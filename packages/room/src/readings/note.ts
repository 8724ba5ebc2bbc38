import type { GaugeQuantity, Id } from '@fryward/shared'
import { insertFact } from '../facts/insert-fact.ts'
import type { Work } from '../frame/write-in-room.ts'
import type { Noted } from './worth-noting.ts'

const measureOf = {
  temperature: 'temperatureC',
  salinity: 'salinity',
  ph: 'pH',
  oxygen: 'oxygenMgPerL',
} as const satisfies Partial<Record<GaugeQuantity, string>>
const isMeasure = (quantity: GaugeQuantity): quantity is keyof typeof measureOf => quantity in measureOf

export type NotedGauge = {
  id: Id
  key: string
  quantity: GaugeQuantity
  subjectId: Id
  notedUntil: Date | null
  notedValue: number | null
}

/** Writes what a gauge read into the records, unless somebody who looked at the same time has. @returns ids of the records. */
export async function note(work: Work, gauge: NotedGauge, noted: readonly Noted[]): Promise<Id[]> {
  const last = noted.at(-1)
  if (!last || !isMeasure(gauge.quantity)) return []
  const { count } = await work.tx.gauge.updateMany({
    where: { roomId: work.roomId, id: gauge.id, notedUntil: gauge.notedUntil },
    data: { notedUntil: new Date(last.to), notedValue: last.mean },
  })
  if (count === 0) return []
  const ids: Id[] = []
  for (const { from, to, mean, readings } of noted) {
    const { id } = await insertFact(work, {
      at: new Date(to).toISOString(),
      fact: {
        kind: 'water_reading',
        subjectId: gauge.subjectId,
        data: {
          ...{ gaugeId: gauge.id, gaugeKey: gauge.key, from: new Date(from).toISOString(), readings },
          [measureOf[gauge.quantity]]: Number(mean.toFixed(2)),
        },
      },
    })
    ids.push(id)
  }
  return ids
}
