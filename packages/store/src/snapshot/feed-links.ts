import { column, date, kind, text } from './column.ts'

// A link whose batch or culture has ended feeds nobody.
export const feedLinks = kind(
  {
    id: text('id'),
    batchId: text('batch_id'),
    cultureId: text('culture_id'),
    fromOn: date('from_on'),
    untilOn: column<string | null>('until_on'),
  },
  `feed_link WHERE room_id = room.id AND batch_id IN (SELECT id FROM alive) AND culture_id IN (SELECT id FROM alive)`,
)
