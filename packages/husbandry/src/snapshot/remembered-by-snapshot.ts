import type { RoomSnapshot } from './room-snapshot.ts'

/**
 * Remembers a pure answer about a snapshot for as long as the snapshot lives, so that rules which ask the same thing
 * (a harvest, its refill, tonight's water) do not work it out again. The answer may depend on nothing else.
 */
export function rememberedBySnapshot<T>(): (snapshot: RoomSnapshot, key: string, compute: () => T) => T {
  const bySnapshot = new WeakMap<RoomSnapshot, Map<string, { value: T }>>()
  return (snapshot, key, compute) => {
    const answers = bySnapshot.get(snapshot) ?? new Map<string, { value: T }>()
    bySnapshot.set(snapshot, answers)
    const known = answers.get(key)
    if (known) return known.value
    const value = compute()
    answers.set(key, { value })
    return value
  }
}
