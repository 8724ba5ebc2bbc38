import { inRoom, type Requests } from './writing.ts'

export const foodRequests = {
  getFood: (writing) => ({ params: inRoom(writing) }),
  askWhatIf: (writing) => ({ params: inRoom(writing), body: { changes: [{ kind: 'away', days: 2 }] } }),
} satisfies Requests
