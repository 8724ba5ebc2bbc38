type Parts = {
  /** Sends the first that waits in a lane. @returns whether the lane may go on at once. */
  sendHead: (lane: string) => Promise<boolean>
  /** Does a lane's work while no other tab does. */
  alone: (lane: string, work: () => Promise<void>) => Promise<void>
  later: (ms: number, run: () => void) => () => void
}

/** Runs lanes beside one another, each in its order and never twice at once; one that has to wait has one alarm clock. */
export function makeLaneRunner({ sendHead, alone, later }: Parts) {
  const running = new Set<string>()
  const askedAgain = new Set<string>()
  const clocks = new Map<string, () => void>()

  function stopClock(lane: string): void {
    clocks.get(lane)?.()
    clocks.delete(lane)
  }

  async function run(lane: string): Promise<void> {
    if (running.has(lane)) {
      askedAgain.add(lane)
      return
    }
    running.add(lane)
    stopClock(lane)
    try {
      await alone(lane, async () => {
        do askedAgain.delete(lane)
        while (await sendHead(lane))
      })
    } finally {
      running.delete(lane)
    }
    if (askedAgain.delete(lane)) await run(lane)
  }

  return {
    run,
    isWaiting: (lane: string): boolean => clocks.has(lane),
    runAfter: (ms: number, lane: string): void => {
      stopClock(lane)
      // Who asked meanwhile waits too.
      askedAgain.delete(lane)
      clocks.set(
        lane,
        later(ms, () => void run(lane)),
      )
    },
  }
}
