import { inRoom, type Requests, type Writing } from './writing.ts'

async function worryOf({ world, full }: Writing): Promise<string> {
  const body = { text: 'the heater hums', isWorry: true }
  return (await world.ok(full.owner, 'writeNote', { params: { roomId: full.roomId }, body })).id
}

export const handOverRequests = {
  getHandOver: (writing) => ({ params: inRoom(writing) }),
  markLooked: (writing) => ({ params: inRoom(writing), body: { revision: 1 } }),
  writeNote: (writing) => ({
    params: inRoom(writing),
    body: { text: 'fed a little more', isWorry: false, subjectId: writing.full.pair.id },
  }),
  settleWorry: async (writing) => ({ params: inRoom(writing, { noteId: await worryOf(writing) }), body: {} }),
} satisfies Requests
