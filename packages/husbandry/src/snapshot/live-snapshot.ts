import type { Fact } from '../facts/fact.ts'
import { LatestByKey } from '../memo/latest-by-key.ts'
import { hasAny, type NameBits, NameNumbers } from '../memo/name-bits.ts'
import { Reader, type Reads } from '../memo/reads.ts'
import { FactLists } from './fact-lists.ts'
import { isEqual } from './is-equal.ts'
import type { RoomSnapshot, RuleSetting } from './room-snapshot.ts'
import { nextSettings } from './rule-settings.ts'

type Part = Exclude<keyof RoomSnapshot, 'facts' | 'ruleSettings'>
const parts = [
  ...(['room', 'tanks', 'cultures', 'concentrates', 'pairs', 'clutches', 'batches', 'groups'] as const),
  ...(['feedLinks', 'foodPlan'] as const),
] satisfies readonly Part[]

/** An answer: what it asked for and read itself, and the names of all that lies below. */
type Known = { value: unknown; reads: Reads<Known>; restsOn: NameBits; heldIn: Moment }
type Answers = Map<unknown, LatestByKey<Known>>
/** What snapshots of one room share. */
type Memory = { answers: Answers; names: NameNumbers }
/** Where in a room's course a snapshot stands, and the names under which it reads something else than the one before. */
type Moment = { before: Moment | null; changed: readonly number[] }

/** What stands behind a live snapshot; none of it is seen by whoever reads the snapshot. */
type Live = { given: RoomSnapshot; lists: FactLists; memory: Memory; moment: Moment }
const reader = new Reader<Known>()
const behind = new WeakMap<RoomSnapshot, Live>()

/**
 * A snapshot whose reads are noted, so that an answer worked out from it is worked out again in the next one only when
 * something that it read has changed. Reads and gives the same as a plain one.
 */
export function openSnapshot(given: RoomSnapshot): RoomSnapshot {
  const lists = FactLists.of(given.facts)
  return live({ given, lists, ...fresh() })
}

const fresh = (): Pick<Live, 'memory' | 'moment'> => ({
  memory: { answers: new Map(), names: new NameNumbers() },
  moment: { before: null, changed: [] },
})

// A room of 60 vessels reads under some thousand names. What has ended leaves its own behind, so that a room of years begins
// its memory anew now and then.
const mostNames = 5000

/** The next snapshot of the same room: whatever is equal in both stays the same object, and answers that rest on it hold. */
export function nextSnapshot(before: RoomSnapshot, given: RoomSnapshot): RoomSnapshot {
  const was = behind.get(before)
  if (!was) return openSnapshot(given)
  const { lists, changed: changedLists } = was.lists.next(given.facts)
  const changedParts = parts.filter((part) => !isEqual(was.given[part], given[part]))
  const { ruleSettings, changed: changedRules } = nextSettings(was.given.ruleSettings, given.ruleSettings)
  const same: RoomSnapshot = { ...was.given, facts: given.facts, ruleSettings }
  for (const part of changedParts) Object.assign(same, { [part]: given[part] })
  const changed = [...changedLists, ...changedParts, ...changedRules.map(ruleName)]
  if (changedRules.length > 0) changed.push('ruleSettings')
  if (was.memory.names.size > mostNames) return live({ given: same, lists, ...fresh() })
  return live({ given: same, lists, memory: was.memory, moment: momentAfter(was, changed) })
}

// Few answers are asked for again after longer; whoever is looks at what it read.
const mostMoments = 30

function momentAfter({ memory, moment }: Live, changed: readonly string[]): Moment {
  let oldest = moment
  for (let back = 0; back < mostMoments && oldest.before; back += 1) oldest = oldest.before
  oldest.before = null
  return { before: moment, changed: changed.map((name) => memory.names.of(name)) }
}

function live(from: Live): RoomSnapshot {
  const snapshot = {} as RoomSnapshot
  for (const part of [...parts, 'facts', 'ruleSettings'] as const)
    Object.defineProperty(snapshot, part, { enumerable: true, get: () => reader.noted(part, peek(from, part)) })
  behind.set(snapshot, from)
  return snapshot
}

const ruleName = (id: string): string => `rule ${id}`

/** What a read of this name gives, without noting it. */
function peek({ given, lists }: Live, name: string): unknown {
  if (name === 'facts') return lists.all
  if (name.startsWith(ruleName(''))) return given.ruleSettings[name.slice(ruleName('').length)]
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
  return from ? reader.noted(ruleName(ruleId), from.given.ruleSettings[ruleId]) : snapshot.ruleSettings[ruleId]
}

const plain = new WeakMap<readonly Fact[], { length: number; lists: FactLists }>()

/** The facts on one of the lists that every room keeps of them (`FactLists`), oldest first. */
export function factList(snapshot: Pick<RoomSnapshot, 'facts'>, name: string): readonly Fact[] {
  const from = behind.get(snapshot as RoomSnapshot)
  if (from) return reader.noted(name, from.lists.named(name))
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
  const { answers: all, names } = from.memory
  const answers = all.get(asked.question) ?? new LatestByKey<Known>(mostAnswers)
  all.set(asked.question, answers)
  const known = answers.get(asked.key)
  if (known && holds(known, from)) {
    reader.notedAnswer(known)
    return known.value as T
  }
  const { value, reads } = reader.readsOf(compute)
  const below = Array.from(reads.answers, ({ restsOn }) => restsOn)
  const found = { value, reads, restsOn: names.union(reads.names.keys(), below), heldIn: from.moment }
  answers.set(asked.key, found)
  reader.notedAnswer(found)
  return value
}

function holds(known: Known, from: Live): boolean {
  const isHeld = isUntouched(known, from.moment) ?? isAsItWas(known, from)
  if (isHeld) known.heldIn = from.moment
  return isHeld
}

/** Whether nothing that an answer rests on has changed since it last held; null where that moment does not lie behind this one. */
function isUntouched({ heldIn, restsOn }: Known, moment: Moment): boolean | null {
  let isSame = true
  for (let each: Moment | null = moment; each; each = each.before) {
    if (each === heldIn) return isSame
    isSame &&= !hasAny(restsOn, each.changed)
  }
  return null
}

function isAsItWas({ reads }: Known, from: Live): boolean {
  for (const [name, value] of reads.names) if (peek(from, name) !== value) return false
  for (const answer of reads.answers) if (!holds(answer, from)) return false
  return true
}

// A room of 60 vessels asks some two thousand questions of one kind about two days; a day later they are others.
const mostAnswers = 6000

/** True for a snapshot whose reads are noted. */
export const isLive = (snapshot: RoomSnapshot): boolean => behind.has(snapshot)
