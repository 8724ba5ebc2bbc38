import { column, kind, number, text } from './column.ts'

export const concentrates = kind(
  {
    id: text('id'),
    name: text('name'),
    cellsPerMl: number('cells_per_ml'),
    openedOn: column<string | null>('opened_on'),
    useBy: column<string | null>('use_by'),
  },
  'concentrate WHERE room_id = room.id AND NOT is_finished',
)
