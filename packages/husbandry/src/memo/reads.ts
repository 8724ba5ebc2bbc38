/** What a computation read, by name, as it was. */
export type Reads = ReadonlyMap<string, unknown>

// Whoever computes at this moment. Computations here are synchronous, so there is never more than one.
let reader: Map<string, unknown> | null = null

/** Notes for whoever computes that this was read; gives back what was read. */
export function noted<T>(name: string, value: T): T {
  reader?.set(name, value)
  return value
}

/** Notes for whoever computes all that an answer rests on which was worked out before. */
export function noteAll(reads: Reads): void {
  if (reader) for (const [name, value] of reads) reader.set(name, value)
}

/** Runs a computation and says what it read, itself or through answers that it asked for. */
export function readsOf<T>(compute: () => T): { value: T; reads: Reads } {
  const outer = reader
  const reads = new Map<string, unknown>()
  reader = reads
  try {
    return { value: compute(), reads }
  } finally {
    reader = outer
    noteAll(reads)
  }
}
