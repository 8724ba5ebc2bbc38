type Bundling<T> = {
  pass: (bundle: T[]) => void
  /** No sooner after the last bundle does the next go, */
  everyMs?: number
  /** unless it weighs as much as this. */
  enough?: number
}
export type Bundles<T> = { add: (one: T, weight?: number) => void; passNow: () => void }

/** Passes things on together: whatever comes in one turn, and where `everyMs` says so what comes soon after the last. */
export function inBundles<T>({ pass, everyMs = 0, enough = Number.POSITIVE_INFINITY }: Bundling<T>): Bundles<T> {
  let gathered: T[] = []
  let weight = 0
  let passedMs = Number.NEGATIVE_INFINITY
  let turn: NodeJS.Immediate | undefined
  let timer: NodeJS.Timeout | undefined

  const passNow = () => {
    clearImmediate(turn)
    clearTimeout(timer)
    turn = timer = undefined
    if (gathered.length === 0) return
    const bundle = gathered
    gathered = []
    weight = 0
    passedMs = performance.now()
    pass(bundle)
  }
  return {
    passNow,
    add: (one, itsWeight = 0) => {
      gathered.push(one)
      weight += itsWeight
      const waitMs = weight >= enough ? 0 : passedMs + everyMs - performance.now()
      if (waitMs <= 0) turn ??= setImmediate(passNow)
      else timer ??= setTimeout(passNow, waitMs)
    },
  }
}
