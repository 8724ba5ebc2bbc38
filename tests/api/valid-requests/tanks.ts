import type { RawRequest } from '../send.ts'
import { change, end, inRoom, type Requests, type Writing } from './writing.ts'

const createTank = (writing: Writing): RawRequest => ({
  params: inRoom(writing),
  body: { name: `Tank ${writing.serial}`, kind: 'storage', volumeL: 100, temperatureC: 25, salinity: 33 },
})

export const tankRequests = {
  listTanks: (writing) => ({ params: inRoom(writing) }),
  createTank,
  changeTank: change('tankId', 'pairTank', { temperatureC: 26 }),
  endTank: end('tankId', ['createTank', createTank]),
} satisfies Requests
