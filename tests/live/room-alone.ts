import {
  checkValues,
  draftDay,
  findRule,
  nextSnapshot,
  openSnapshot,
  type RoomSnapshot,
  rules,
  type TaskDraft,
} from '@fryward/husbandry'
import type { Instant, PlainDate } from '@fryward/shared'
import { crashesOf } from '../../packages/room/src/food/crashes-of.ts'
import { foodAsked } from '../../packages/room/src/food/food-asked.ts'
import { ordersOf, saysTheSame } from '../../packages/room/src/food/food-orders.ts'
import { markOf } from '../../packages/room/src/food/food-thinker.ts'
import { closedOff } from '../../packages/room/src/state/close-off.ts'
import { windowStart } from '../../packages/room/src/state/fact-window.ts'
import { BookAlone, type Setup } from './book-alone.ts'
import { plannedByName } from './food-by-name.ts'

/** A room that the rules alone keep. */
export class RoomAlone {
  readonly book: BookAlone
  readonly #done = new Set<string>()
  #listed = new Map<string, TaskDraft>()
  #read: { snapshot: RoomSnapshot; revision: number; since: Instant } | null = null
  #newest = 0
  #plannedOf = ''

  constructor(setup: Setup, at: Instant) {
    this.book = new BookAlone(setup, at)
  }

  list(date: PlainDate, now: Instant): { draft: TaskDraft; isOpen: boolean }[] {
    const { drafts } = draftDay({ snapshot: this.#snapshot(now), date, rules })
    this.#listed = new Map(drafts.map((draft) => [draft.key, draft]))
    return drafts
      .filter(({ closesAt }) => closesAt > now)
      .map((draft) => ({ draft, isOpen: !this.#done.has(draft.key) }))
      .sort((a, b) => (a.draft.dueAt < b.draft.dueAt ? -1 : a.draft.dueAt > b.draft.dueAt ? 1 : 0))
  }

  /** What was typed that cannot be kept; nothing once it is. */
  signOff(key: string, values: Record<string, unknown>, at: Instant): { path: string; message: string }[] {
    const draft = this.#listed.get(key)
    const rule = draft && findRule(draft.ruleId)
    if (!draft || !rule) return [{ path: 'taskId', message: 'There is no such task' }]
    const { content, subjectId } = draft
    const checked = checkValues({ fields: content.fields, values, confirmed: content.fields.map(({ name }) => name) })
    const problems = [...checked.problems, ...(rule.check?.(checked.values) ?? [])]
    if (problems.length > 0) return problems
    // As it comes back from a database.
    const context: unknown = JSON.parse(JSON.stringify(draft.context ?? null))
    const outcome = rule.record({ context, content, values: checked.values, doneAt: at, subjectId })
    this.#done.add(key)
    this.book.revision += 1
    for (const creation of outcome.creations ?? []) this.book.create(creation, { at, taskId: key })
    for (const fact of outcome.facts) this.book.write(fact, { at, taskId: key })
    return []
  }

  /** As the front door does it behind everybody's back (`plan-room-food.ts`). */
  async planFood(now: Instant): Promise<void> {
    const record = { ...crashesOf(this.book.keptCultures(), now), lived: this.book.lived }
    const job = foodAsked(this.#snapshot(now), { now, record })
    const mark = markOf(job)
    if (this.#plannedOf === mark) return
    this.#plannedOf = mark
    const days = ordersOf(await plannedByName(job))
    if (saysTheSame(this.book.snapshot.foodPlan?.days ?? [], days)) return
    this.book.snapshot.foodPlan = { madeAt: now, days }
    this.book.revision += 1
  }

  /** What was written down since it was last asked. */
  news() {
    const { facts } = this.book.snapshot
    const fresh = facts.filter(({ id }) => (this.book.revisions.get(id) ?? 0) > this.#newest)
    this.#newest = this.book.revision
    return fresh.map((fact) => ({ ...fact, revision: this.book.revisions.get(fact.id) ?? 0 }))
  }

  #snapshot(now: Instant): RoomSnapshot {
    const since = windowStart(now)
    const { revision, snapshot: rows, ended } = this.book
    if (this.#read?.revision === revision && this.#read.since === since) return this.#read.snapshot
    const lives = ({ id }: { id: string }) => !ended.has(id)
    const given = closedOff(
      { ...copied(rows), batches: rows.batches.filter(lives), groups: rows.groups.filter(lives) },
      since,
    )
    rows.facts = [...given.facts]
    const snapshot = this.#read ? nextSnapshot(this.#read.snapshot, given) : openSnapshot(given)
    this.#read = { snapshot, revision, since }
    return snapshot
  }
}

/** Lists of its own, which the book's own do not change later. */
const copied = (rows: RoomSnapshot): RoomSnapshot => ({
  ...rows,
  tanks: [...rows.tanks],
  cultures: [...rows.cultures],
  clutches: [...rows.clutches],
  pairs: [...rows.pairs],
  feedLinks: [...rows.feedLinks],
  facts: [...rows.facts],
})
