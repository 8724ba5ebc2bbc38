import type { UnitSystem } from '../generated/enums.ts'
import { column, number, type RowOf, text } from './column.ts'

export const roomColumns = {
  id: text('room.id'),
  name: text('room.name'),
  timeZone: text('room.time_zone'),
  units: column<UnitSystem>('room.units'),
  lightsOnAt: text('room.lights_on_at'),
  lightsOffAt: text('room.lights_off_at'),
  rounds: column<unknown>('room.rounds'),
  salinity: number('room.salinity'),
  temperatureC: number('room.temperature_c'),
}
export type RoomRow = RowOf<typeof roomColumns>
