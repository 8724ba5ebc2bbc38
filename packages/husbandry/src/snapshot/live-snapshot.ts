import type { Fact } from '../facts/fact.ts'
import { noteAll, noted, type Reads, readsOf } from '../memo/reads.ts'
import { FactLists } from './fact-lists.ts'
import type { RoomSnapshot, RuleSetting } from './room-snapshot.ts'

type Part = Exclude<keyof RoomSnapshot, 'facts' | 'ruleSettings'>
const parts = [
  ...(['room', 'tanks', 'cultures', 'concentrates', 'pairs', 'clutches', 'batches', 'groups'] as const),
  ...(['feedLinks', 'foodPlan'] as const),
] satisfies readonly Part[]

type Known = { value: unknown; reads: Reads; heldIn: Live }
type Memory = Map<unknown, Map<string, Known>>

/** What stands behind a live snapshot; none of it is seen by whoever reads the snapshot. */
type Live = { given: RoomSnapshot; lists: FactLists; memory: Memory }
const behind = new WeakMap<RoomSnapshot, Live>()

/**
 * A snapshot whose reads are noted, so that an answer worked out from it is worked out again in the next one only when
 * something that it read has changed. Reads and gives the same as a plain one.
 */
export function openSnapshot(given: RoomSnapshot): RoomSnapshot {
  return live({ given, lists: FactLists.of(given.facts), memory: new Map() })
}

/** The next snapshot of the same room: whatever is equal in both stays the same object, and answers that rest on it hold. */
export function nextSnapshot(before: RoomSnapshot, given: RoomSnapshot): RoomSnapshot {
  const was = behind.get(before)
  if (!was) return openSnapshot(given)
  const same: RoomSnapshot = { ...given, ruleSettings: sameSettings(was.given.ruleSettings, given.ruleSettings) }
  for (const part of parts) if (isEqual(was.given[part], given[part])) Object.assign(same, { [part]: was.given[part] })
  return live({ given: same, lists: was.lists.next(given.facts), memory: was.memory })
}

const isEqual = (a: unknown, b: unknown): boolean => a === b || JSON.stringify(a) === JSON.stringify(b)

function sameSettings(before: Record<string, RuleSetting>, given: Record<string, RuleSetting>) {
  return Object.fromEntries(
    Object.entries(given).map(([id, setting]) => [id, isEqual(before[id], setting) ? before[id]! : setting]),
  )
}

function live(from: Live): RoomSnapshot {
  const snapshot = {} as RoomSnapshot
  for (const part of [...parts, 'facts', 'ruleSettings'] as const)
    Object.defineProperty(snapshot, part, { enumerable: true, get: () => noted(part, peek(from, part)) })
  behind.set(snapshot, from)
  return snapshot
}

/** What a read of this name gives, without noting it. */
function peek({ given, lists }: Live, name: string): unknown {
  if (name === 'facts') return lists.all
  if (name.startsWith('rule ')) return given.ruleSettings[name.slice('rule '.length)]
  if (name in given) return given[name as keyof RoomSnapshot]
  return lists.named(name)
}

/** Says for whoever computes that the answer rests on the things of the room themselves, such as one it was handed. */
export function restsOnThings(snapshot: RoomSnapshot): void {
  for (const part of parts) void snapshot[part]
}

/** How a room has set a rule; undefined while it runs with its defaults. */
export function settingOf(snapshot: Pick<RoomSnapshot, 'ruleSettings'>, ruleId: string): RuleSetting | undefined {
  const from = behind.get(snapshot as RoomSnapshot)
  return from ? noted(`rule ${ruleId}`, from.given.ruleSettings[ruleId]) : snapshot.ruleSettings[ruleId]
}

const plain = new WeakMap<readonly Fact[], { length: number; lists: FactLists }>()

/** The facts on one of the lists that every room keeps of them (`FactLists`), oldest first. */
export function factList(snapshot: Pick<RoomSnapshot, 'facts'>, name: string): readonly Fact[] {
  const from = behind.get(snapshot as RoomSnapshot)
  if (from) return noted(name, from.lists.named(name))
  const { facts } = snapshot
  const known = plain.get(facts)
  if (known?.length === facts.length) return known.lists.named(name)
  const lists = FactLists.of(facts)
  plain.set(facts, { length: facts.length, lists })
  return lists.named(name)
}

/**
 * A pure answer about a snapshot, worked out once for as long as all that it read stays as it is. `question` belongs to
 * whoever asks, and with `key` says everything else that the answer depends on. An error is not remembered.
 */
export function answerOf<T>(snapshot: RoomSnapshot, asked: { question: object; key: string }, compute: () => T): T {
  const from = behind.get(snapshot)
  if (!from) return compute()
  const answers = from.memory.get(asked.question) ?? new Map<string, Known>()
  from.memory.set(asked.question, answers)
  const known = answers.get(asked.key)
  if (known && holds(known, from)) {
    noteAll(known.reads)
    return known.value as T
  }
  const { value, reads } = readsOf(compute)
  remember(answers, asked.key, { value, reads, heldIn: from })
  return value
}

function holds(known: Known, from: Live): boolean {
  if (known.heldIn === from) return true
  for (const [name, value] of known.reads) if (peek(from, name) !== value) return false
  known.heldIn = from
  return true
}

// A room of 60 vessels asks some two thousand questions of one kind about two days; a day later they are others.
const mostAnswers = 6000

function remember(answers: Map<string, Known>, key: string, known: Known): void {
  answers.delete(key)
  answers.set(key, known)
  const oldest = answers.keys().next()
  if (answers.size > mostAnswers && !oldest.done) answers.delete(oldest.value)
}

/** True for a snapshot whose reads are noted. */
export const isLive = (snapshot: RoomSnapshot): boolean => behind.has(snapshot)
