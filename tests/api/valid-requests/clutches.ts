import { minutesFrom } from '../full-room.ts'
import { change, inRoom, type Requests } from './writing.ts'

export const clutchRequests = {
  listClutches: (writing) => ({ params: inRoom(writing) }),
  createClutch: (writing) => ({
    params: inRoom(writing),
    body: {
      pairId: writing.full.pair.id,
      name: `Clutch ${writing.serial}`,
      spawnedAt: minutesFrom(writing.world, -30),
      eggs: 200,
    },
  }),
  changeClutch: change('clutchId', 'clutch', { intent: 'raise_all' }),
} satisfies Requests
