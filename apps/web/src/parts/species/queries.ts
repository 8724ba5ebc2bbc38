import type { Id } from '@fryward/shared'
import { queryOptions } from '@tanstack/react-query'
import { call } from '@/base/api/call.ts'
import { type Typed, useRoomCommand } from '@/parts/rooms/queries.ts'

export const speciesOptions = () =>
  queryOptions({
    queryKey: ['species'],
    queryFn: ({ signal }) => call('listSpecies', { signal }),
    staleTime: Number.POSITIVE_INFINITY,
  })

export const useChangeOtherSpecies = (roomId: Id, species: string, typed?: Typed) =>
  useRoomCommand(roomId, 'changeOtherSpecies', (body) => ({ params: { roomId, species }, body, ...typed }))
