// from memory: a script that a weak network dropped comes with the next tries, or not for minutes
const againMs = 3_000

/** Loads a script however long that takes: without a network it is asked for again and again, and nothing breaks. */
export async function untilLoaded<T>(load: () => Promise<T>): Promise<T> {
  for (;;) {
    try {
      return await load()
    } catch (error) {
      if (!(error instanceof Error) || error.name !== 'ChunkLoadError') throw error
      await new Promise((resolve) => window.setTimeout(resolve, againMs))
    }
  }
}
