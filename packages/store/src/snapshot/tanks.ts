import type { TankKind } from '../generated/enums.ts'
import { column, kind, number, text, yesNo } from './column.ts'

export const tanks = kind(
  {
    id: text('id'),
    name: text('alive.name'),
    kind: column<TankKind>('kind'),
    volumeL: number('volume_l'),
    temperatureC: number('temperature_c'),
    salinity: number('salinity'),
    hasFilter: yesNo('has_filter'),
    lightHours: column<number | null>('light_hours'),
  },
  'tank JOIN alive USING (id) WHERE room_id = room.id',
)
