import { dayMs } from '../calendar/elapsed.ts'
import type { SnapshotCulture } from '../snapshot/room-snapshot.ts'
import type { SnapshotBuilder } from './snapshot-builder.ts'

/**
 * A rotifer culture that has grown by 0.35 a day from 63 per mL, counted every morning, until `date`; nothing taken
 * from it yet.
 */
export function risingCulture(
  room: SnapshotBuilder,
  { date, days, volumeL = 18, ...given }: { date: string; days: number } & Partial<SnapshotCulture>,
): SnapshotCulture {
  const morning = Date.parse(`${date}T06:30:00.000Z`)
  const startedAt = new Date(morning - days * dayMs).toISOString()
  const culture = room.culture({
    volumeL,
    concentrateId: room.snapshot.concentrates[0]?.id ?? null,
    ...given,
    startedAt,
  })
  room.fact('inoculation', culture.id, startedAt, { densityPerMl: 63 })
  for (let day = 1; day <= days; day += 1) {
    const density = Math.round(63 * Math.exp(0.35 * day))
    room.count(culture, new Date(morning - (days - day) * dayMs).toISOString(), [density, density + 4, density - 4], {
      eggs: 40,
      females: 60,
    })
  }
  return culture
}
