import type { BodyInputOf, Id } from '@fryward/shared'
import { type Typed, useRoomCommand } from '@/parts/rooms/queries.ts'

/** What a culture ended of is said of cultures alone: the form of nothing else asks. */
type EndInput = BodyInputOf<'endCulture'>

const endings = {
  tank: (roomId: Id, tankId: Id) => ({ route: 'endTank', params: { roomId, tankId } }) as const,
  culture: (roomId: Id, cultureId: Id) => ({ route: 'endCulture', params: { roomId, cultureId } }) as const,
  pair: (roomId: Id, pairId: Id) => ({ route: 'endPair', params: { roomId, pairId } }) as const,
  larval_batch: (roomId: Id, batchId: Id) => ({ route: 'endLarvalBatch', params: { roomId, batchId } }) as const,
  juvenile_group: (roomId: Id, groupId: Id) => ({ route: 'endJuvenileGroup', params: { roomId, groupId } }) as const,
}
export type Endable = { kind: keyof typeof endings; id: Id }

/** Takes the end of a thing back. */
export const useReopen = (roomId: Id) =>
  useRoomCommand(roomId, 'reopenThing', ({ id, name, version }: { id: Id; name: string; version: number }) => ({
    params: { roomId, subjectId: id },
    body: { version },
    about: name,
  }))

/** Takes a thing out of use, whatever it is; its history stays. */
export function useEnd(roomId: Id, thing: Endable, typed?: Typed) {
  const { route, params } = endings[thing.kind](roomId, thing.id)
  return useRoomCommand(roomId, route, (body: EndInput) => ({ params, body, ...typed }))
}
