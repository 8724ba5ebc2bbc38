import { column, kind, text, yesNo } from './column.ts'

export const pairs = kind(
  {
    id: text('id'),
    name: text('alive.name'),
    species: text('species'),
    tankId: text('tank_id'),
    nestSite: text('nest_site'),
    formedOn: column<string | null>('formed_on'),
    isResting: yesNo('is_resting'),
  },
  'pair JOIN alive USING (id) WHERE room_id = room.id',
)
