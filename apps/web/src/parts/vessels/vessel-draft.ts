import type { Culture, Room, Tank } from '@fryward/shared'
import { toTyped, typedNumber } from '@/base/forms/typed-number.ts'

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
  volume: toTyped(vessel?.volumeL, 'L', room.units),
  temperature: toTyped(vessel?.temperatureC ?? room.temperatureC, 'degC', room.units),
  salinity: toTyped(vessel?.salinity ?? room.salinity, null, room.units),
  hasFilter: vessel?.hasFilter ?? hasFilter,
  note: vessel?.note ?? '',
})

/** The vessel in the wire's units, or a sentence about what is missing. */
export function readVessel(draft: VesselDraft, { units }: Room) {
  const volumeL = typedNumber(draft.volume, 'L', units)
  const temperatureC = typedNumber(draft.temperature, 'degC', units)
  const salinity = typedNumber(draft.salinity, null, units)
  if (volumeL === undefined || temperatureC === undefined || salinity === undefined)
    return 'Volume, temperature and salinity, as numbers.'
  const { name, hasFilter, note } = draft
  return { name, volumeL, temperatureC, salinity, hasFilter, note }
}
