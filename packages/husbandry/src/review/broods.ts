import type { Id, Instant } from '@fryward/shared'
import type { Fact, FactOf } from '../facts/fact.ts'
import type { SnapshotClutch } from '../snapshot/room-snapshot.ts'
import { clutchState } from '../state/clutch-state.ts'
import type { ReviewRoom } from './review-room.ts'

/** A batch or group whose animals were all of one brood, until animals of another came to them; null when none did. */
export type BroodVessel = { id: Id; kind: 'larval_batch' | 'juvenile_group'; mixedAt: Instant | null }

/**
 * The animals that a review can follow: one clutch, or several that hatched into one tank, whose larvae nobody can tell
 * apart from then on; with every vessel that held them alone. A batch split and merged again stays with its brood; where
 * animals of two broods come together later, neither can be followed any further.
 */
export type Brood = { id: Id; clutches: SnapshotClutch[]; vessels: BroodVessel[] }

/** All broods of a room, by the first of their clutches, oldest first. */
export function broodsOf(room: ReviewRoom): Brood[] {
  const laid = room.clutches
    .filter((clutch) => clutchState(room, clutch) !== 'void')
    .sort((a, b) => (a.spawnedAt === b.spawnedAt ? (a.id < b.id ? -1 : 1) : a.spawnedAt < b.spawnedAt ? -1 : 1))
  const broodOf = sharedHatches(laid, room.facts)
  const vessels = traceVessels(room, broodOf)
  const broods = new Map<Id, Brood>()
  for (const clutch of laid) {
    const id = broodOf.get(clutch.id) ?? clutch.id
    const brood = broods.get(id) ?? { id, clutches: [], vessels: vessels.get(id) ?? [] }
    brood.clutches.push(clutch)
    broods.set(id, brood)
  }
  return [...broods.values()]
}

const isHatch = (fact: Fact): fact is FactOf<'hatch'> => fact.kind === 'hatch'

/** The brood of each clutch: the oldest of those that hatched into one batch, over several batches too. */
function sharedHatches(laid: readonly SnapshotClutch[], facts: readonly Fact[]): Map<Id, Id> {
  const broodOf = new Map(laid.map(({ id }) => [id, id]))
  const order = new Map(laid.map(({ id }, index) => [id, index]))
  const firstInto = new Map<Id, Id>()
  for (const { subjectId, data } of facts.filter(isHatch)) {
    const own = broodOf.get(subjectId)
    if (own === undefined || data.batchId === undefined) continue
    const other = broodOf.get(firstInto.get(data.batchId) ?? subjectId) ?? own
    firstInto.set(data.batchId, subjectId)
    if (own === other) continue
    const [kept, joined] = (order.get(own) ?? 0) <= (order.get(other) ?? 0) ? [own, other] : [other, own]
    for (const [clutchId, brood] of broodOf) if (brood === joined) broodOf.set(clutchId, kept)
  }
  return broodOf
}

/** Whose animals a vessel holds: a brood's, or those of somebody that no clutch of this room stands for. */
type Held = BroodVessel & { owner: Id }

function traceVessels(room: ReviewRoom, broodOf: ReadonlyMap<Id, Id>): Map<Id, BroodVessel[]> {
  const held = new Map<Id, Held>()
  const kinds = new Map<Id, BroodVessel['kind']>([
    ...room.batches.map(({ id }) => [id, 'larval_batch'] as const),
    ...room.groups.map(({ id }) => [id, 'juvenile_group'] as const),
  ])
  // Fish of no batch of this room are there once they are counted.
  const boughtIn = new Set(room.groups.filter(({ fromBatchId }) => fromBatchId === null).map(({ id }) => id))
  const arrive = (id: Id, owner: Id, at: Instant) => {
    const kind = kinds.get(id)
    if (!kind) return
    const known = held.get(id)
    if (!known) held.set(id, { id, kind, owner, mixedAt: null })
    else if (known.owner !== owner && known.mixedAt === null) known.mixedAt = at
  }
  const ownerOf = (id: Id): Id => {
    const vessel = held.get(id)
    return vessel?.mixedAt === null ? vessel.owner : (broodOf.get(id) ?? `of ${id}`)
  }
  for (const fact of room.facts) {
    if (isHatch(fact) && fact.data.batchId !== undefined)
      arrive(fact.data.batchId, broodOf.get(fact.subjectId) ?? `of ${fact.subjectId}`, fact.at)
    if (fact.kind === 'transfer') arrive(fact.data.toSubjectId, ownerOf(fact.subjectId), fact.at)
    if (fact.kind === 'count' && boughtIn.has(fact.subjectId) && !held.has(fact.subjectId))
      arrive(fact.subjectId, `of ${fact.subjectId}`, fact.at)
  }
  const byOwner = new Map<Id, BroodVessel[]>()
  for (const { owner, ...vessel } of held.values()) byOwner.set(owner, [...(byOwner.get(owner) ?? []), vessel])
  return byOwner
}
