import type { Id, Instant } from '@fryward/shared'
import { type Database, findRevision, readSnapshot, type Transaction } from '@fryward/store'
import { lasting, windowStart } from './fact-window.ts'
import { knownState } from './known-states.ts'
import { advanceState, openState, type RoomState, slideState } from './room-state.ts'

export type StateAsked = { tx: Transaction; roomId: Id; ctx: { database: Database; now: Instant } }

/**
 * The room as this transaction sees it, its own writes included: what is known already with what was written since, or
 * read whole. A known state that another process has overtaken catches up the same way; one from after this
 * transaction's snapshot, or of a later day, is of no use to it.
 */
export async function readState({ tx, roomId, ctx }: StateAsked): Promise<RoomState> {
  const since = windowStart(ctx.now)
  const known = knownState(ctx.database, roomId)
  const base = known && known.since <= since ? known : undefined
  if (base && base.revision === (await findRevision(tx, roomId))) return slideState(base, since)
  return catchUp({ tx, roomId, since, base })
}

/** The room under a write's lock, where its revision is known to have moved on. */
export async function readStateOfWrite({ tx, roomId, ctx }: StateAsked): Promise<RoomState> {
  const since = windowStart(ctx.now)
  const known = knownState(ctx.database, roomId)
  return catchUp({ tx, roomId, since, base: known && known.since <= since ? known : undefined })
}

type CatchUp = { tx: Transaction; roomId: Id; since: Instant; base: RoomState | undefined }

async function catchUp({ tx, roomId, since, base }: CatchUp): Promise<RoomState> {
  const ask = (afterRevision: number | null) => readSnapshot(tx, { roomId, since, lasting, afterRevision })
  const rows = await ask(base?.revision ?? null)
  if (!rows) throw new Error(`There is no room ${roomId}`)
  if (!base) return openState(rows, since)
  // What had ended was closed off: of something that lives again more is asked than what is new.
  const isWhole = rows.reopened <= base.revision
  if (isWhole && base.revision <= rows.revision) return advanceState(base, rows, since)
  return openState((await ask(null))!, since)
}

/** The room as it stood in the eyes of an earlier moment, for the page of something that ended then. Not kept. */
export async function readStateAround({ tx, roomId, at }: { tx: Transaction; roomId: Id; at: Instant }) {
  return catchUp({ tx, roomId, since: windowStart(at), base: undefined })
}
