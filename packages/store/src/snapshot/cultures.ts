import type { CultureKind, RotiferStrain } from '../generated/enums.ts'
import { column, instant, kind, number, text, yesNo } from './column.ts'

export const cultures = kind(
  {
    id: text('id'),
    name: text('alive.name'),
    kind: column<CultureKind>('kind'),
    strain: column<RotiferStrain | null>('strain'),
    volumeL: number('volume_l'),
    temperatureC: number('temperature_c'),
    salinity: number('salinity'),
    hasFilter: yesNo('has_filter'),
    isBackup: yesNo('is_backup'),
    concentrateId: column<string | null>('concentrate_id'),
    parentCultureId: column<string | null>('parent_culture_id'),
    airLine: column<string | null>('air_line'),
    shelf: column<string | null>('shelf'),
    tools: column<string | null>('tools'),
    startedAt: instant('started_at'),
  },
  'culture JOIN alive USING (id) WHERE room_id = room.id',
)
