import { RoomError } from '../errors.ts'

export type WaitingLine = {
  /** Waits for a turn; whoever got one gives it back with `leave`. @throws RoomError `busy` when the wait is too long. */
  enter: (lane: string) => Promise<void>
  leave: () => void
  isEmpty: () => boolean
}

type Limits = { atOnce: number; mostWaiting: number; longestWaitMs: number }
type Waiter = { admit: () => void }

/**
 * Turns at one thing, handed out lane by lane: whoever sends a hundred requests waits behind their own, and somebody
 * else with one is next but one. Bounded in length and in time.
 */
export function createWaitingLine({ atOnce, mostWaiting, longestWaitMs }: Limits): WaitingLine {
  let working = 0
  let waiting = 0
  // In the order in which the lanes have their turn: the one served goes to the end.
  const lanes = new Map<string, Waiter[]>()

  const takeOut = (lane: string, waiter: Waiter) => {
    const rest = (lanes.get(lane) ?? []).filter((each) => each !== waiter)
    lanes.delete(lane)
    if (rest.length > 0) lanes.set(lane, rest)
    waiting -= 1
  }
  const wait = (lane: string) =>
    new Promise<void>((resolve, reject) => {
      const waiter: Waiter = {
        admit: () => {
          clearTimeout(patience)
          takeOut(lane, waiter)
          resolve()
        },
      }
      const patience = setTimeout(() => {
        takeOut(lane, waiter)
        reject(busy())
      }, longestWaitMs)
      lanes.set(lane, [...(lanes.get(lane) ?? []), waiter])
      waiting += 1
    })

  return {
    enter: async (lane) => {
      if (working >= atOnce) {
        if (waiting >= mostWaiting) throw busy()
        // The turn is handed over: `working` counts it all along.
        return wait(lane)
      }
      working += 1
    },
    leave: () => {
      const next = lanes.values().next().value?.[0]
      if (next) next.admit()
      else working -= 1
    },
    isEmpty: () => working === 0,
  }
}

const busy = () =>
  new RoomError(
    'busy',
    'Many things are being written in this room at once. Nothing of this was saved; try again soon.',
  )
