import type { FoodChange, FoodView, Id } from '@fryward/shared'
import { queryOptions, useMutation } from '@tanstack/react-query'
import { call } from '@/base/api/call.ts'
import { roomKey } from '@/parts/rooms/queries.ts'

/** A new plan comes some seconds after the room has changed, and no event tells of it. */
const newPlanMs = 4000
const patientMs = 20_000

export const foodOptions = (roomId: Id) =>
  queryOptions({
    queryKey: [...roomKey(roomId), 'food'],
    queryFn: ({ signal }) => call('getFood', { params: { roomId }, signal }),
    refetchInterval: ({ state }) => (state.data && state.data.plan?.isStale === false ? false : newPlanMs),
  })

const isStale = (view: FoodView | undefined) => view?.plan?.isStale === true

/** The same on a page that is about something else: the next plan is waited for with patience, a first one not at all. */
export const foodInPassing = (roomId: Id) =>
  queryOptions({
    ...foodOptions(roomId),
    refetchInterval: ({ state }) => isStale(state.data) && patientMs,
  })

/** Asks what would become of the food; nothing is saved by it. */
export const useWhatIf = (roomId: Id) =>
  useMutation({
    mutationFn: (change: FoodChange) => call('askWhatIf', { params: { roomId }, body: { changes: [change] } }),
  })
