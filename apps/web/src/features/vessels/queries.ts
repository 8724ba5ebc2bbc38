import type { BodyInputOf, FactKind, Id } from '@fryward/shared'
import { infiniteQueryOptions, queryOptions, useMutation } from '@tanstack/react-query'
import { call } from '@/api/call.ts'
import { mergePages } from '@/features/records/timeline.ts'
import { outlookPart, roomKey, useRefreshRoom } from '@/features/rooms/queries.ts'
import { usualDensities } from './density-fill.ts'

const thingsKey = (roomId: Id, kind: string) => [...roomKey(roomId), 'things', kind] as const

export const tanksOptions = (roomId: Id) =>
  queryOptions({
    queryKey: thingsKey(roomId, 'tanks'),
    queryFn: ({ signal }) => call('listTanks', { params: { roomId }, signal }),
  })
export const culturesOptions = (roomId: Id) =>
  queryOptions({
    queryKey: thingsKey(roomId, 'cultures'),
    queryFn: ({ signal }) => call('listCultures', { params: { roomId }, signal }),
  })
export const pairsOptions = (roomId: Id) =>
  queryOptions({
    queryKey: thingsKey(roomId, 'pairs'),
    queryFn: ({ signal }) => call('listPairs', { params: { roomId }, signal }),
  })
export const clutchesOptions = (roomId: Id) =>
  queryOptions({
    queryKey: thingsKey(roomId, 'clutches'),
    queryFn: ({ signal }) => call('listClutches', { params: { roomId }, signal }),
  })
export const batchesOptions = (roomId: Id) =>
  queryOptions({
    queryKey: thingsKey(roomId, 'batches'),
    queryFn: ({ signal }) => call('listLarvalBatches', { params: { roomId }, signal }),
  })
export const groupsOptions = (roomId: Id) =>
  queryOptions({
    queryKey: thingsKey(roomId, 'groups'),
    queryFn: ({ signal }) => call('listJuvenileGroups', { params: { roomId }, signal }),
  })
export const feedLinksOptions = (roomId: Id) =>
  queryOptions({
    queryKey: thingsKey(roomId, 'feed-links'),
    queryFn: ({ signal }) => call('listFeedLinks', { params: { roomId }, signal }),
  })
export const concentratesOptions = (roomId: Id) =>
  queryOptions({
    queryKey: thingsKey(roomId, 'concentrates'),
    queryFn: ({ signal }) => call('listConcentrates', { params: { roomId }, signal }),
  })
export const speciesOptions = () =>
  queryOptions({
    queryKey: ['species'],
    queryFn: ({ signal }) => call('listSpecies', { signal }),
    staleTime: Number.POSITIVE_INFINITY,
  })

export const outlookOptions = (roomId: Id, cultureId: Id, query: { harvestShare?: number; days?: number } = {}) =>
  queryOptions({
    queryKey: [...roomKey(roomId), outlookPart, cultureId, query],
    queryFn: ({ signal }) => call('getCultureOutlook', { params: { roomId, cultureId }, query, signal }),
  })

/** What is usual changes over weeks: one look an hour is enough, and no event asks for another. */
const usualStaleMs = 3_600_000
/** Enough for some weeks of a room with a handful of cultures. */
const usualCounts = 300

/** What each culture of the room usually stands at, per mL, from its last counts. */
export const usualDensitiesOptions = (roomId: Id) =>
  queryOptions({
    queryKey: ['usual-densities', roomId],
    queryFn: async ({ signal }) => {
      const page = await call('listFacts', { params: { roomId }, query: { kind: 'count', limit: usualCounts }, signal })
      return usualDensities(page.facts)
    },
    staleTime: usualStaleMs,
  })

const factsAtOnce = 50

/** What happened to one thing, newest first; only facts of these kinds when any are named. */
export const factsOptions = (roomId: Id, subjectId: Id, kinds: readonly FactKind[] = []) =>
  infiniteQueryOptions({
    queryKey: [...roomKey(roomId), 'facts', subjectId, kinds],
    queryFn: async ({ signal, pageParam }) => {
      const before = pageParam === null ? {} : { before: pageParam }
      const ask = (kind: { kind?: FactKind }) =>
        call('listFacts', {
          params: { roomId },
          query: { subjectId, limit: factsAtOnce, ...before, ...kind },
          signal,
        })
      return kinds.length === 0 ? ask({}) : mergePages(await Promise.all(kinds.map((kind) => ask({ kind }))))
    },
    initialPageParam: null as string | null,
    getNextPageParam: (last) => last.nextBefore,
  })

/** Each write refreshes the whole room: a fact or a changed vessel works the day out again. */
function useRoomWrite<I, O>(roomId: Id, mutationFn: (input: I) => Promise<O>) {
  const refresh = useRefreshRoom(roomId)
  return useMutation({ mutationFn, onSettled: () => void refresh() })
}

export const useCreateTank = (roomId: Id) =>
  useRoomWrite(roomId, (body: BodyInputOf<'createTank'>) => call('createTank', { params: { roomId }, body }))
export const useCreateCulture = (roomId: Id) =>
  useRoomWrite(roomId, (body: BodyInputOf<'createCulture'>) => call('createCulture', { params: { roomId }, body }))
export const useCreatePair = (roomId: Id) =>
  useRoomWrite(roomId, (body: BodyInputOf<'createPair'>) => call('createPair', { params: { roomId }, body }))
export const useCreateClutch = (roomId: Id) =>
  useRoomWrite(roomId, (body: BodyInputOf<'createClutch'>) => call('createClutch', { params: { roomId }, body }))
export const useCreateBatch = (roomId: Id) =>
  useRoomWrite(roomId, (body: BodyInputOf<'createLarvalBatch'>) =>
    call('createLarvalBatch', { params: { roomId }, body }),
  )
export const useCreateGroup = (roomId: Id) =>
  useRoomWrite(roomId, (body: BodyInputOf<'createJuvenileGroup'>) =>
    call('createJuvenileGroup', { params: { roomId }, body }),
  )
export const useCreateFeedLink = (roomId: Id) =>
  useRoomWrite(roomId, (body: BodyInputOf<'createFeedLink'>) => call('createFeedLink', { params: { roomId }, body }))
export const useCreateConcentrate = (roomId: Id) =>
  useRoomWrite(roomId, (body: BodyInputOf<'createConcentrate'>) =>
    call('createConcentrate', { params: { roomId }, body }),
  )

export const useChangeTank = (roomId: Id, tankId: Id) =>
  useRoomWrite(roomId, (body: BodyInputOf<'changeTank'>) => call('changeTank', { params: { roomId, tankId }, body }))
export const useChangeCulture = (roomId: Id, cultureId: Id) =>
  useRoomWrite(roomId, (body: BodyInputOf<'changeCulture'>) =>
    call('changeCulture', { params: { roomId, cultureId }, body }),
  )
export const useChangePair = (roomId: Id, pairId: Id) =>
  useRoomWrite(roomId, (body: BodyInputOf<'changePair'>) => call('changePair', { params: { roomId, pairId }, body }))
export const useChangeClutch = (roomId: Id, clutchId: Id) =>
  useRoomWrite(roomId, (body: BodyInputOf<'changeClutch'>) =>
    call('changeClutch', { params: { roomId, clutchId }, body }),
  )
export const useChangeBatch = (roomId: Id, batchId: Id) =>
  useRoomWrite(roomId, (body: BodyInputOf<'changeLarvalBatch'>) =>
    call('changeLarvalBatch', { params: { roomId, batchId }, body }),
  )
export const useChangeGroup = (roomId: Id, groupId: Id) =>
  useRoomWrite(roomId, (body: BodyInputOf<'changeJuvenileGroup'>) =>
    call('changeJuvenileGroup', { params: { roomId, groupId }, body }),
  )
export const useChangeConcentrate = (roomId: Id) =>
  useRoomWrite(roomId, ({ id, body }: { id: Id; body: BodyInputOf<'changeConcentrate'> }) =>
    call('changeConcentrate', { params: { roomId, concentrateId: id }, body }),
  )
export const useEndFeedLink = (roomId: Id) =>
  useRoomWrite(roomId, ({ id, body }: { id: Id; body: BodyInputOf<'endFeedLink'> }) =>
    call('endFeedLink', { params: { roomId, feedLinkId: id }, body }),
  )

type EndInput = BodyInputOf<'endTank'>
export type Endable = { kind: 'tank' | 'culture' | 'pair' | 'larval_batch' | 'juvenile_group'; id: Id }

/** Takes a thing out of use, whatever it is; its history stays. */
export const useEnd = (roomId: Id, thing: Endable) =>
  useRoomWrite(roomId, async (body: EndInput) => {
    if (thing.kind === 'tank') await call('endTank', { params: { roomId, tankId: thing.id }, body })
    if (thing.kind === 'culture') await call('endCulture', { params: { roomId, cultureId: thing.id }, body })
    if (thing.kind === 'pair') await call('endPair', { params: { roomId, pairId: thing.id }, body })
    if (thing.kind === 'larval_batch') await call('endLarvalBatch', { params: { roomId, batchId: thing.id }, body })
    if (thing.kind === 'juvenile_group') await call('endJuvenileGroup', { params: { roomId, groupId: thing.id }, body })
  })

export const useRecordFact = (roomId: Id) =>
  useRoomWrite(roomId, (body: BodyInputOf<'recordFact'>) => call('recordFact', { params: { roomId }, body }))
export const useStrikeFact = (roomId: Id) =>
  useRoomWrite(roomId, ({ factId, reason }: { factId: Id; reason: string }) =>
    call('strikeFact', { params: { roomId, factId }, body: { reason } }),
  )
