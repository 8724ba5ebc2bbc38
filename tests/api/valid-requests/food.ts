import { inRoom, type Requests, recorder } from './writing.ts'

export const foodRequests = {
  /** Of a room that has chosen something, so that there is something under way. */
  getFood: async (writing) => {
    const { world, full } = writing
    const data = { change: { kind: 'thin_less' as const }, planMadeAt: world.clock.now() }
    await world.ok(await recorder(writing), 'recordFact', {
      params: { roomId: full.roomId },
      body: { kind: 'cure', subjectId: full.roomId, data },
    })
    return { params: inRoom(writing) }
  },
  askWhatIf: (writing) => ({ params: inRoom(writing), body: { changes: [{ kind: 'away', days: 2 }] } }),
} satisfies Requests
