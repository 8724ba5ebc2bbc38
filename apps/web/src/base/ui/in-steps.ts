/**
 * Loads the pieces of something large one after the other, and then what is made of them: all at once they hold a slow phone
 * up for as long as a tap is felt to be lost.
 */
export const inSteps =
  <T>(pieces: readonly (() => Promise<unknown>)[], load: () => Promise<T>) =>
  async (): Promise<T> => {
    for (const piece of pieces) {
      await piece()
      // A tap that waits is heard now.
      await new Promise((resolve) => setTimeout(resolve))
    }
    return load()
  }
