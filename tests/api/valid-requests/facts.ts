import { inRoom, type Requests, recorder, type Writing } from './writing.ts'

async function factOf(writing: Writing): Promise<string> {
  const { world, full } = writing
  const recorded = await world.ok(await recorder(writing), 'recordFact', {
    params: { roomId: full.roomId },
    body: { kind: 'observation', subjectId: full.pair.id, data: { note: 'seen by mistake' } },
  })
  return recorded.id
}

export const factRequests = {
  listFacts: (writing) => ({ params: inRoom(writing), query: { limit: '20' } }),
  recordFact: (writing) => ({
    params: inRoom(writing),
    body: { kind: 'observation', subjectId: writing.full.pair.id, data: { signs: ['all_well'] } },
  }),
  strikeFact: async (writing) => ({
    params: inRoom(writing, { factId: await factOf(writing) }),
    body: { reason: 'the wrong tank' },
  }),
  listAudit: (writing) => ({ params: inRoom(writing), query: { limit: '20' } }),
} satisfies Requests
