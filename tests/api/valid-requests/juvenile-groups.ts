import { inRoom, type Requests, type Writing } from './writing.ts'

async function groupOf({ world, full, serial }: Writing): Promise<{ id: string; version: number }> {
  return world.ok(full.owner, 'createJuvenileGroup', {
    params: { roomId: full.roomId },
    body: {
      name: `Group for ${serial}`,
      tankId: full.larvalTank.id,
      species: 'amphiprion-ocellaris',
      settledOn: world.clock.now().slice(0, 10),
      number: 12,
    },
  })
}

export const juvenileGroupRequests = {
  listJuvenileGroups: (writing) => ({ params: inRoom(writing) }),
  createJuvenileGroup: (writing) => ({
    params: inRoom(writing),
    body: {
      name: `Group ${writing.serial}`,
      tankId: writing.full.larvalTank.id,
      fromBatchId: writing.full.batch.id,
      settledOn: writing.world.clock.now().slice(0, 10),
      number: 1,
    },
  }),
  changeJuvenileGroup: async (writing) => {
    const { id, version } = await groupOf(writing)
    return { params: inRoom(writing, { groupId: id }), body: { note: 'eating well', version } }
  },
  endJuvenileGroup: async (writing) => {
    const { id, version } = await groupOf(writing)
    return { params: inRoom(writing, { groupId: id }), body: { reason: 'all placed', version } }
  },
} satisfies Requests
