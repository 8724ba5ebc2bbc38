import {
  clutchEggs,
  clutchIntent,
  clutchNights,
  clutchState,
  elapsedDays,
  type RoomSnapshot,
  type SnapshotClutch,
} from '@fryward/husbandry'
import type { Clutch, Id } from '@fryward/shared'
import { notFound } from '../errors.ts'
import type { Scope } from '../frame/read-in-room.ts'
import { closedPastOf } from '../state/closed-past.ts'

export async function listClutchesInRoom(scope: Scope): Promise<Clutch[]> {
  const state = await scope.state()
  const past = await closedPastOf(scope, state)
  const subjects = await scope.tx.subject.findMany({
    where: { roomId: scope.roomId, kind: 'clutch' },
    select: { id: true, version: true },
  })
  const versions = new Map(subjects.map((subject) => [subject.id, subject.version]))
  const at = (clutch: SnapshotClutch) => ({ clutch, now: scope.ctx.now, version: versions.get(clutch.id) ?? 1 })
  // Those of the past have hatched, moved or been lost, or nobody ever said: no nights are forecast for them.
  return [
    ...state.snapshot.clutches.map((clutch) => toClutch({ ...at(clutch), ...state, isPast: false })),
    ...past.clutches.map((clutch) =>
      toClutch({ ...at(clutch), snapshot: { ...state.snapshot, ...past }, isPast: true }),
    ),
  ].sort((a, b) => (a.spawnedAt < b.spawnedAt ? 1 : -1))
}

export async function getClutchInRoom(scope: Scope, clutchId: Id): Promise<Clutch> {
  const clutch = (await listClutchesInRoom(scope)).find((each) => each.id === clutchId)
  if (!clutch) throw notFound('clutch')
  return clutch
}

function toClutch({
  snapshot,
  clutch,
  now,
  version,
  isPast,
}: {
  snapshot: RoomSnapshot
  clutch: SnapshotClutch
  now: string
  version: number
  isPast: boolean
}): Clutch {
  const state = clutchState(snapshot, clutch)
  return {
    id: clutch.id,
    name: clutch.name,
    pairId: clutch.pairId,
    tankId: clutch.tankId,
    species: clutch.species,
    care: clutch.care,
    intent: clutchIntent(snapshot, clutch),
    state,
    spawnedAt: clutch.spawnedAt,
    eggs: clutchEggs(snapshot, clutch),
    ageDays: Math.max(0, elapsedDays(clutch.spawnedAt, now)),
    nights: state === 'incubating' && !isPast ? clutchNights(snapshot, { clutch, at: now }) : [],
    version,
  }
}
