import { PhotoSchema } from '@fryward/shared'
import type { FullRoom } from '../full-room.ts'
import { picture } from '../picture.ts'
import { type RawRequest, send } from '../send.ts'
import { inRoom, type Requests, recorder, type Writing } from './writing.ts'

const smallPicture = picture({ width: 40, height: 30 })
const aPhoto = (full: FullRoom): RawRequest => ({
  params: { roomId: full.roomId },
  query: { subjectId: full.pair.id, caption: 'the nest' },
  bytes: { type: 'image/png', data: smallPicture },
})

async function photoOf(writing: Writing): Promise<string> {
  const { json } = await send(writing.world, await recorder(writing), 'addPhoto', aPhoto(writing.full))
  return PhotoSchema.parse(json).id
}

export const photoRequests = {
  listPhotos: (writing) => ({ params: inRoom(writing), query: { subjectId: writing.full.pair.id } }),
  addPhoto: ({ full }) => aPhoto(full),
  getPhotoFile: async (writing) => ({
    params: inRoom(writing, { photoId: await photoOf(writing), size: 'thumbnail' }),
  }),
  listLooks: (writing) => ({ params: inRoom(writing) }),
  markPhoto: async (writing) => ({
    params: inRoom(writing, { photoId: await photoOf(writing) }),
    body: { shows: 'eggs_eyed' },
  }),
  strikePhoto: async (writing) => ({ params: inRoom(writing, { photoId: await photoOf(writing) }) }),
} satisfies Requests
