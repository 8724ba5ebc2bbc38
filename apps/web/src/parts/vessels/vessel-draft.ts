import type { Culture, Room, Tank } from '@fryward/shared'
import { toTyped, typedNumber } from '@fryward/words'

/** What a tank and a culture have in common, as typed. */
export type VesselDraft = {
  name: string
  volume: string
  temperature: string
  salinity: string
  hasFilter: boolean
  note: string
}

/** The vessel as it is; a new one starts with the water that the room mixes. */
export const startVessel = (
  room: Room,
  vessel: Tank | Culture | undefined,
  { hasFilter }: { hasFilter: boolean },
): VesselDraft => ({
  name: vessel?.name ?? '',
  volume: toTyped(vessel?.volumeL, 'L', room),
  temperature: toTyped(vessel?.temperatureC ?? room.temperatureC, 'degC', room),
  salinity: toTyped(vessel?.salinity ?? room.salinity, null, room),
  hasFilter: vessel?.hasFilter ?? hasFilter,
  note: vessel?.note ?? '',
})

/** The vessel in the wire's units, or a sentence about what is missing. */
export function readVessel(draft: VesselDraft, room: Room) {
  const volumeL = typedNumber(draft.volume, 'L', room)
  const temperatureC = typedNumber(draft.temperature, 'degC', room)
  const salinity = typedNumber(draft.salinity, null, room)
  if (volumeL === undefined || temperatureC === undefined || salinity === undefined)
    return 'Volume, temperature and salinity, as numbers.'
  const { name, hasFilter, note } = draft
  return { name, volumeL, temperatureC, salinity, hasFilter, note }
}
