import { answerOf, isLive, restsOnThings } from './live-snapshot.ts'
import type { RoomSnapshot } from './room-snapshot.ts'

/**
 * Remembers a pure answer about a snapshot, so that rules which ask the same thing (a harvest, its refill, tonight's
 * water) do not work it out again: of a live one for as long as what was read stays as it is, else for as long as the
 * snapshot lives. The answer may depend on nothing else.
 */
export function rememberedBySnapshot<T>(): (snapshot: RoomSnapshot, key: string, compute: () => T) => T {
  const bySnapshot = new WeakMap<RoomSnapshot, Map<string, { value: T }>>()
  const question = {}
  return (snapshot, key, compute) => {
    if (isLive(snapshot))
      return answerOf(snapshot, { question, key }, () => {
        // Who asks holds a culture, a batch or a clutch, read before the question was put.
        restsOnThings(snapshot)
        return compute()
      })
    const answers = bySnapshot.get(snapshot) ?? new Map<string, { value: T }>()
    bySnapshot.set(snapshot, answers)
    const known = answers.get(key)
    if (known) return known.value
    const value = compute()
    answers.set(key, { value })
    return value
  }
}
