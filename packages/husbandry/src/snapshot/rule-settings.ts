import { isEqual } from './is-equal.ts'
import type { RoomSnapshot } from './room-snapshot.ts'

type RuleSettings = RoomSnapshot['ruleSettings']

/** The settings of a later moment, in which what is equal stays the same object; and the rules that are set otherwise now. */
export function nextSettings(
  before: RuleSettings,
  given: RuleSettings,
): { ruleSettings: RuleSettings; changed: string[] } {
  const ids = new Set([...Object.keys(before), ...Object.keys(given)])
  const changed = [...ids].filter((id) => !isEqual(before[id], given[id]))
  if (changed.length === 0) return { ruleSettings: before, changed }
  const kept = Object.entries(before).filter(([id]) => id in given && !changed.includes(id))
  return { ruleSettings: { ...given, ...Object.fromEntries(kept) }, changed }
}
