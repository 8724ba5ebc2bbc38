import type { RawRequest } from '../send.ts'
import { change, end, inRoom, type Requests, type Writing } from './writing.ts'

const createPair = (writing: Writing): RawRequest => ({
  params: inRoom(writing),
  body: { name: `Pair ${writing.serial}`, species: 'amphiprion-ocellaris', tankId: writing.full.larvalTank.id },
})

export const pairRequests = {
  listPairs: (writing) => ({ params: inRoom(writing) }),
  createPair,
  changePair: change('pairId', 'pair', { isResting: false }),
  endPair: end('pairId', ['createPair', createPair]),
} satisfies Requests
