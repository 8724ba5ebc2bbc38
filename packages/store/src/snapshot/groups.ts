import { column, date, kind, text } from './column.ts'

export const groups = kind(
  {
    id: text('id'),
    name: text('alive.name'),
    species: text('species'),
    tankId: text('tank_id'),
    fromBatchId: column<string | null>('from_batch_id'),
    settledOn: date('settled_on'),
    // Their batch ends when they have moved, and is then read no more.
    hatchedOn: column<string | null>(`(SELECT hatched_on FROM larval_batch
      WHERE larval_batch.room_id = juvenile_group.room_id AND larval_batch.id = from_batch_id)`),
  },
  'juvenile_group JOIN alive USING (id) WHERE room_id = room.id',
)
