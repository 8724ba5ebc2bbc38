import type { ClutchIntent } from '../generated/enums.ts'
import { column, instant, kind, text } from './column.ts'

export const clutches = kind(
  {
    id: text('clutch.id'),
    name: text('alive.name'),
    pairId: text('pair_id'),
    species: text('pair.species'),
    tankId: text('pair.tank_id'),
    intent: column<ClutchIntent>('intent'),
    spawnedAt: instant('spawned_at'),
  },
  `clutch JOIN alive USING (id) JOIN pair ON pair.room_id = clutch.room_id AND pair.id = clutch.pair_id
   WHERE clutch.room_id = room.id`,
  'clutch.id',
)
