import { addressOf, type Id, type PhotoLook, type photoSizes } from '@fryward/shared'
import { queryOptions } from '@tanstack/react-query'
import { useState } from 'react'
import { call } from '@/base/api/call.ts'
import { roomKey, type Typed, useRoomCommand } from '@/parts/rooms/queries.ts'
import { preparePhoto } from './prepare-photo.ts'

export const photosOptions = (roomId: Id, subjectId: Id) =>
  queryOptions({
    queryKey: [...roomKey(roomId), 'photos', subjectId],
    queryFn: ({ signal }) => call('listPhotos', { params: { roomId }, query: { subjectId }, signal }),
  })

/** The room's own pictures of what tasks ask for. */
export const looksOptions = (roomId: Id) =>
  queryOptions({
    queryKey: [...roomKey(roomId), 'looks'],
    queryFn: ({ signal }) => call('listLooks', { params: { roomId }, signal }),
  })

export const photoUrl = (roomId: Id, photoId: Id, size: (typeof photoSizes)[number]): string =>
  addressOf('getPhotoFile', { roomId, photoId, size })

type NewPhoto = { file: File | Blob; subjectId: Id; factId?: Id | undefined; caption: string }

/** Makes a picture ready and sends it; `share` says how far it is. */
export function useAddPhoto(roomId: Id, typed?: Typed) {
  const [share, setShare] = useState(0)
  const add = useRoomCommand(roomId, 'addPhoto', async ({ file, factId, ...words }: NewPhoto) => {
    setShare(0)
    const image = await preparePhoto(file)
    const body = { ...words, image, ...(factId === undefined ? {} : { factId }) }
    return { params: { roomId }, body, onProgress: setShare, ...typed }
  })
  return { add, share }
}

export const useStrikePhoto = (roomId: Id) =>
  useRoomCommand(roomId, 'strikePhoto', (photoId: Id) => ({ params: { roomId, photoId }, body: undefined }))

type Marked = { photoId: Id; shows: PhotoLook | null }
export const useMarkPhoto = (roomId: Id) =>
  useRoomCommand(roomId, 'markPhoto', ({ photoId, shows }: Marked) => ({
    params: { roomId, photoId },
    body: { shows },
  }))
