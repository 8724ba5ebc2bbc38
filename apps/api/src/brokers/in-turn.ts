type Turns = {
  /**
   * @param then is called once `work` and all that was added before it are done; never after one that failed.
   * @returns when there is room for the next.
   */
  add: (work: Promise<void>, then: () => void) => Promise<void>
}

/** Works under way beside each other, at most so many, ended in the order in which they began. */
export function inTurn({ most, onError }: { most: number; onError: (error: unknown) => void }): Turns {
  const ends: Promise<void>[] = []
  let last = Promise.resolve()
  let isOver = false
  const fail = (error: unknown) => {
    if (!isOver) onError(error)
    isOver = true
  }
  return {
    add: async (work, then) => {
      // It may fail before its turn.
      work.catch(fail)
      const before = last
      last = before.then(() => work).then(() => (isOver ? undefined : then()), fail)
      const end = last.then(() => void ends.shift())
      ends.push(end)
      if (ends.length >= most) await ends[0]
    },
  }
}
