import type { RawRequest } from '../send.ts'
import { createCulture } from './cultures.ts'
import { inRoom, made, type Requests, type Writing } from './writing.ts'

const createFeedLink = async (writing: Writing): Promise<RawRequest> => ({
  params: inRoom(writing),
  body: {
    batchId: writing.full.batch.id,
    cultureId: (await made(['createCulture', createCulture], writing)).id,
    fromOn: writing.world.clock.now().slice(0, 10),
  },
})

export const feedLinkRequests = {
  listFeedLinks: (writing) => ({ params: inRoom(writing) }),
  listFeedsToday: (writing) => ({ params: inRoom(writing) }),
  createFeedLink,
  endFeedLink: async (writing) => {
    const { id, version } = await made(['createFeedLink', createFeedLink], writing)
    return {
      params: inRoom(writing, { feedLinkId: id }),
      body: { untilOn: writing.world.clock.now().slice(0, 10), version },
    }
  },
} satisfies Requests
