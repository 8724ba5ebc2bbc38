import type { BodyInputOf, Id } from '@fryward/shared'
import { queryOptions } from '@tanstack/react-query'
import { call } from '@/base/api/call.ts'
import { thingsKey, useRoomWrite } from '@/parts/rooms/queries.ts'

export const concentratesOptions = (roomId: Id) =>
  queryOptions({
    queryKey: thingsKey(roomId, 'concentrates'),
    queryFn: ({ signal }) => call('listConcentrates', { params: { roomId }, signal }),
  })

export const useCreateConcentrate = (roomId: Id) =>
  useRoomWrite(roomId, (body: BodyInputOf<'createConcentrate'>) =>
    call('createConcentrate', { params: { roomId }, body }),
  )

export const useChangeConcentrate = (roomId: Id) =>
  useRoomWrite(roomId, ({ id, body }: { id: Id; body: BodyInputOf<'changeConcentrate'> }) =>
    call('changeConcentrate', { params: { roomId, concentrateId: id }, body }),
  )
