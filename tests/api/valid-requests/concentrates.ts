import { inRoom, type Requests } from './writing.ts'

export const concentrateRequests = {
  listConcentrates: (writing) => ({ params: inRoom(writing) }),
  createConcentrate: (writing) => ({
    params: inRoom(writing),
    body: { name: `Bottle ${writing.serial}`, cellsPerMl: 6e10, openedOn: '2026-03-01', useBy: '2026-06-01' },
  }),
  changeConcentrate: async (writing) => ({
    params: inRoom(writing, { concentrateId: writing.full.concentrate.id }),
    body: {
      useBy: '2026-07-01',
      version: (
        await writing.world.database.prisma.concentrate.findUniqueOrThrow({
          where: { roomId_id: { roomId: writing.full.roomId, id: writing.full.concentrate.id } },
        })
      ).version,
    },
  }),
} satisfies Requests
