import { type Context, type FoodThinker, planRoomFood } from '@fryward/room'

export type FoodDesk = {
  thinker: FoodThinker
  /** The room's plan is to be worked out again soon; nobody waits for it. */
  want: (roomId: string) => void
  close: () => Promise<void>
}

type Asked = {
  thinker: FoodThinker
  /** How long a room is left in peace before its plan is worked out: a round brings many writes. */
  quietMs: number
  ctx: () => Context
  onError: (error: unknown, roomId: string) => void
}

/** Plans the food of rooms that have changed, one room after the other, behind everybody's back. */
export function openFoodDesk({ thinker, quietMs, ctx, onError }: Asked): FoodDesk {
  const timers = new Map<string, NodeJS.Timeout>()
  let work: Promise<unknown> = Promise.resolve()
  let isClosed = false

  const plan = async (roomId: string) => {
    if (isClosed) return
    try {
      await planRoomFood({ ctx: ctx(), roomId, thinker })
    } catch (error) {
      // The room keeps its last plan, which says that it is old; the next change tries again. A server that stops takes the
      // work away from under us, and nothing is wrong.
      if (!isClosed) onError(error, roomId)
    }
  }
  return {
    thinker,
    want: (roomId) => {
      // A room that goes on changing is planned all the same: the first change starts the time.
      if (isClosed || timers.has(roomId)) return
      const timer = setTimeout(() => {
        timers.delete(roomId)
        work = work.then(() => plan(roomId))
      }, quietMs)
      timer.unref()
      timers.set(roomId, timer)
    },
    close: async () => {
      isClosed = true
      for (const timer of timers.values()) clearTimeout(timer)
      await thinker.close()
      await work
    },
  }
}
