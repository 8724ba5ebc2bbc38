import { column, date, kind, text } from './column.ts'

export const batches = kind(
  {
    id: text('id'),
    name: text('alive.name'),
    species: text('species'),
    tankId: text('tank_id'),
    hatchedOn: date('hatched_on'),
    clutchIds: column<string[]>(`(SELECT coalesce(json_agg(clutch_id ORDER BY clutch_id), '[]') FROM batch_clutch
      WHERE batch_clutch.room_id = larval_batch.room_id AND batch_id = larval_batch.id)`),
  },
  'larval_batch JOIN alive USING (id) WHERE room_id = room.id',
)
