import { oxygenSaturation } from '@fryward/seawater'
import type { Id, Instant } from '@fryward/shared'
import { addMinutes, epochMillisecondsOf, hourMs } from '../calendar/elapsed.ts'
import type { RoomSnapshot } from '../snapshot/room-snapshot.ts'
import { type Measure, type WaterRead, waterReads } from './water-reads.ts'

export type Vessel = { id: Id; temperatureC: number; salinity: number }
/** A value as it was read, or as the vessel is set where nothing was read that still speaks for its water. */
export type KnownWater = { value: number; read: WaterRead | null }
export type OxygenHeld = { mgPerL: number; temperatureC: KnownWater; salinity: KnownWater }

// Warmth follows heater and room within hours, salinity what evaporates within days. common practice
const speaksForMs = { temperatureC: 12 * hourMs, salinity: 7 * 24 * hourMs } as const
// Where the table of saturation ends (seawater).
const ends = { temperatureC: 50, salinity: 45.2 } as const

/** How much oxygen a vessel's water holds at saturation about an instant, by its warmth and salinity; at sea level. */
export function oxygenHeld(snapshot: RoomSnapshot, vessel: Vessel, at: Instant): OxygenHeld {
  const temperatureC = knownAt(snapshot, vessel, { measure: 'temperatureC', at })
  const salinity = knownAt(snapshot, vessel, { measure: 'salinity', at })
  return {
    ...{ temperatureC, salinity },
    mgPerL: oxygenSaturation({ temperatureC: temperatureC.value, salinity: salinity.value }),
  }
}

function knownAt(
  snapshot: RoomSnapshot,
  vessel: Vessel,
  { measure, at }: { measure: Extract<Measure, keyof typeof ends>; at: Instant },
): KnownWater {
  const away = (read: WaterRead) => Math.abs(epochMillisecondsOf(read.at) - epochMillisecondsOf(at))
  const until = addMinutes(at, speaksForMs[measure] / 60_000)
  const near = waterReads(snapshot, measure, { subjectId: vessel.id, until })
    .filter((read) => away(read) <= speaksForMs[measure])
    .sort((one, other) => away(one) - away(other))[0]
  const value = near?.value ?? vessel[measure]
  return { value: Math.min(ends[measure], Math.max(0, value)), read: near ?? null }
}
