import { addressOf, type Id, type photoSizes } from '@fryward/shared'
import { queryOptions, useMutation } from '@tanstack/react-query'
import { useState } from 'react'
import { call } from '@/base/api/call.ts'
import { uploadPhoto } from '@/base/api/upload.ts'
import { roomKey, useRefreshRoom } from '@/parts/rooms/queries.ts'
import { preparePhoto } from './prepare-photo.ts'

export const photosOptions = (roomId: Id, subjectId: Id) =>
  queryOptions({
    queryKey: [...roomKey(roomId), 'photos', subjectId],
    queryFn: ({ signal }) => call('listPhotos', { params: { roomId }, query: { subjectId }, signal }),
  })

export const photoUrl = (roomId: Id, photoId: Id, size: (typeof photoSizes)[number]): string =>
  addressOf('getPhotoFile', { roomId, photoId, size })

type NewPhoto = { file: File; subjectId: Id; factId?: Id | undefined; caption: string; requestKey: string }

/** Makes a picture ready and sends it; `share` says how far it is. */
export function useAddPhoto(roomId: Id) {
  const refresh = useRefreshRoom(roomId)
  const [share, setShare] = useState(0)
  const add = useMutation({
    mutationFn: async ({ file, requestKey, ...query }: NewPhoto) => {
      setShare(0)
      return uploadPhoto({ roomId, query, image: await preparePhoto(file), requestKey, onProgress: setShare })
    },
    onSettled: () => void refresh(),
  })
  return { add, share }
}

export function useStrikePhoto(roomId: Id) {
  const refresh = useRefreshRoom(roomId)
  return useMutation({
    mutationFn: (photoId: Id) => call('strikePhoto', { params: { roomId, photoId } }),
    onSettled: () => void refresh(),
  })
}
