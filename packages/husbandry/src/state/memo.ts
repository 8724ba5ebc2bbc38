import { remembered } from '../calendar/remembered.ts'
import type { RoomSnapshot } from '../snapshot.ts'

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

/**
 * Remembers pure answers by everything that they depend on, written as JSON: the same question has the same answer with
 * or without the memory. The oldest are forgotten past `most`.
 */
export function rememberedByContent<T>(most: number): (question: unknown, compute: () => T) => T {
  const answers = remembered<T>(most)
  return (question, compute) => answers(JSON.stringify(question), compute)
}
