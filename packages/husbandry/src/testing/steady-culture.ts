import { dayMs } from '../calendar/elapsed.ts'
import type { SnapshotCulture } from '../snapshot/room-snapshot.ts'
import type { SnapshotBuilder } from './snapshot-builder.ts'

const at = (ms: number) => new Date(ms).toISOString()

/**
 * A rotifer culture three weeks old that holds about 240 per mL (220-258) under a harvest of a fifth a day, counted
 * every morning until `date`; nothing taken from it yet on that day.
 */
export function steadyCulture(
  room: SnapshotBuilder,
  { date, volumeL = 18, ...given }: { date: string } & Partial<SnapshotCulture>,
): SnapshotCulture {
  const days = 21
  const morning = Date.parse(`${date}T06:30:00.000Z`)
  const startedAt = at(morning - days * dayMs)
  const culture = room.culture({
    volumeL,
    concentrateId: room.snapshot.concentrates[0]?.id ?? null,
    ...given,
    startedAt,
  })
  room.fact('inoculation', culture.id, startedAt, { densityPerMl: 63 })
  for (let day = 1; day <= days; day += 1) {
    const ms = morning - (days - day) * dayMs
    const density = day < 5 ? Math.round(63 * Math.exp(0.3 * day)) : 220 + ((day * 37) % 39)
    room.count(culture, at(ms), [density, density + 3, density - 3], { eggs: 40, females: 60 })
    if (day < 5 || day === days) continue
    const taken = Number((volumeL / 5).toFixed(3))
    const parts = [{ to: 'drain', volumeL: taken } as const]
    room.fact('harvest', culture.id, at(ms + 30 * 60_000), { volumeL: taken, parts })
    room.fact('water_change', culture.id, at(ms + 40 * 60_000), { removedL: 0, addedL: taken })
  }
  return culture
}
