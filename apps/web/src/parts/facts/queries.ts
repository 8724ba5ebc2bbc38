import type { FactKind, Id } from '@fryward/shared'
import { infiniteQueryOptions } from '@tanstack/react-query'
import { call } from '@/base/api/call.ts'
import { roomKey, type Typed, useRoomCommand } from '@/parts/rooms/queries.ts'
import { mergePages } from './merge-pages.ts'

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

export const useRecordFact = (roomId: Id, typed?: Typed) =>
  useRoomCommand(roomId, 'recordFact', (body) => ({ params: { roomId }, body, ...typed }))

/** Enters what was struck out again, as it was. */
export const useRestoreFact = (roomId: Id, factId: Id) =>
  useRoomCommand(roomId, 'restoreFact', (_: undefined) => ({ params: { roomId, factId }, body: {} }))

export const useStrikeFact = (roomId: Id, factId: Id, typed?: Typed) =>
  useRoomCommand(roomId, 'strikeFact', (body) => ({ params: { roomId, factId }, body, ...typed }))
