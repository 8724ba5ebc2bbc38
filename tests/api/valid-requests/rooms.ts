import { roomSetup } from '../../support/world.ts'
import { inRoom, type Requests } from './writing.ts'

export const roomRequests = {
  createRoom: ({ serial }) => ({
    body: {
      ...roomSetup,
      name: `Room ${serial}`,
      tanks: [{ name: 'T', kind: 'larval', volumeL: 40, temperatureC: 26, salinity: 30 }],
    },
  }),
  getRoom: (writing) => ({ params: inRoom(writing) }),
  changeRoom: async (writing) => ({
    params: inRoom(writing),
    body: {
      salinity: 34,
      version: (await writing.world.database.prisma.room.findUniqueOrThrow({ where: { id: writing.full.roomId } }))
        .version,
    },
  }),
  changeOtherSpecies: async (writing) => {
    const { full, world, serial } = writing
    const species = `other-x-gramma-sp-${serial}`
    const body = { name: `Fish ${serial}`, species, tankId: full.larvalTank.id }
    await world.ok(full.owner, 'createPair', { params: inRoom(writing), body })
    return {
      params: { ...inRoom(writing), species },
      body: { name: `Gramma sp. ${serial}`, eggDays: 6, care: 'nest' },
    }
  },
  listenToRoom: (writing) => ({ params: inRoom(writing) }),
  listSpecies: () => ({}),
} satisfies Requests
