import { column, date, kind, text } from './column.ts'

export const groups = kind(
  {
    id: text('id'),
    name: text('alive.name'),
    species: text('species'),
    tankId: text('tank_id'),
    fromBatchId: column<string | null>('from_batch_id'),
    settledOn: date('settled_on'),
  },
  'juvenile_group JOIN alive USING (id) WHERE room_id = room.id',
)
