import { minutesFrom } from '../full-room.ts'
import type { RawRequest } from '../send.ts'
import { change, end, inRoom, type Requests, type Writing } from './writing.ts'

export const createCulture = (writing: Writing): RawRequest => ({
  params: inRoom(writing),
  body: {
    ...{
      name: `Culture ${writing.serial}`,
      kind: 'rotifer',
      strain: 'L',
      volumeL: 20,
      temperatureC: 25,
      salinity: 20,
    },
    concentrateId: writing.full.concentrate.id,
    parentCultureId: writing.full.culture.id,
    startDensityPerMl: 80,
    startedAt: minutesFrom(writing.world, -60),
  },
})

export const cultureRequests = {
  listCultures: (writing) => ({ params: inRoom(writing) }),
  createCulture,
  changeCulture: change('cultureId', 'culture', { temperatureC: 26 }),
  endCulture: end('cultureId', ['createCulture', createCulture]),
  getCultureOutlook: (writing) => ({
    params: inRoom(writing, { cultureId: writing.full.culture.id }),
    query: { days: '3', harvestShare: '0.2' },
  }),
} satisfies Requests
