import type { Id, Instant } from '@fryward/shared'
import type { Database } from '@fryward/store'

/** Who acts: a person who signed in, with the session that they did it by, a device with its token, or the clock. */
export type Actor =
  | { kind: 'person'; userId: string; name: string; sessionId?: string }
  | { kind: 'device'; roomId: Id; deviceId: Id; name: string }
  | { kind: 'system'; job: string }

/** What every use case gets. `now` is read once at the door, so a use case never sees the clock move. */
export type Context = {
  database: Database
  actor: Actor
  now: Instant
  /** A write's own key with the hash of its request, so that a repeat gets the first answer. */
  idempotency?: { key: string; requestHash: string }
}

export const actorName = (actor: Actor): string => (actor.kind === 'system' ? 'Fryward' : actor.name)
export const actorUserId = (actor: Actor): string | null => (actor.kind === 'person' ? actor.userId : null)
