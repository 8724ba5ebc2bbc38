import { planRoomFood } from '@fryward/room'
import { tickNow } from '../scheduler/room-clock.ts'
import { openRoom, type Person, type World } from '../support/world.ts'
import { thinkByName } from './food-by-name.ts'

type Setup = NonNullable<Parameters<typeof openRoom>[1]>

/** What keepers ask, by whomever it is answered. */
export type Service = Pick<World, 'ok' | 'call' | 'clock'> & {
  open: (setup: Setup) => Promise<{ owner: Person; room: { id: string; revision: number } }>
  /** What the scheduler does. */
  tick: () => Promise<unknown>
  /** What the front door does seconds after something was written. */
  planFood: (room: { owner: Person; roomId: string }) => Promise<unknown>
}

/** The whole of it: API, scheduler and database. */
export const served = (world: World): Service => ({
  ...{ ok: world.ok, call: world.call, clock: world.clock },
  open: (setup) => openRoom(world, setup),
  tick: () => tickNow(world),
  planFood: ({ owner, roomId }) => planRoomFood({ ctx: world.contextOf(owner), roomId, thinker: thinkByName }),
})
