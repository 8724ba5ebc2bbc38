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
// A gauge that reads the same is noted daily, an hour late: until then the last note speaks for it.
const gaugeSpeaksForMs = 26 * hourMs
// Where the table of saturation ends (seawater).
const ends = { temperatureC: 50, salinity: 45.2 } as const

/** How much oxygen a vessel's water holds at saturation about an instant, by its warmth and salinity; at sea level. */
export function oxygenHeld(snapshot: RoomSnapshot, vessel: Vessel, at: Instant): OxygenHeld {
  const temperatureC = knownAt(snapshot, vessel, { measure: 'temperatureC', at })
  const salinity = knownAt(snapshot, vessel, { measure: 'salinity', at })
  return {
    ...{ temperatureC, salinity },
    mgPerL: heldBy({ temperatureC: temperatureC.value, salinity: salinity.value }),
  }
}

/** How much oxygen water of this warmth and salinity holds; by the nearest that the table knows. */
export const heldBy = ({ temperatureC, salinity }: Pick<Vessel, 'temperatureC' | 'salinity'>): number =>
  oxygenSaturation({
    temperatureC: Math.min(ends.temperatureC, Math.max(0, temperatureC)),
    salinity: Math.min(ends.salinity, Math.max(0, salinity)),
  })

function knownAt(
  snapshot: RoomSnapshot,
  vessel: Vessel,
  { measure, at }: { measure: Extract<Measure, keyof typeof ends>; at: Instant },
): KnownWater {
  const away = (read: WaterRead) => Math.abs(epochMillisecondsOf(read.at) - epochMillisecondsOf(at))
  const speaksFor = ({ fact }: WaterRead) =>
    Math.max(speaksForMs[measure], fact.kind === 'water_reading' ? gaugeSpeaksForMs : 0)
  const until = addMinutes(at, Math.max(speaksForMs[measure], gaugeSpeaksForMs) / 60_000)
  const near = waterReads(snapshot, measure, { subjectId: vessel.id, until })
    .filter((read) => away(read) <= speaksFor(read))
    .sort((one, other) => away(one) - away(other))[0]
  return { value: near?.value ?? vessel[measure], read: near ?? null }
}
