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

export async function listClutchesInRoom(scope: Scope): Promise<Clutch[]> {
  const { snapshot } = await scope.state()
  const subjects = await scope.tx.subject.findMany({
    where: { roomId: scope.roomId, kind: 'clutch' },
    select: { id: true, version: true },
  })
  const versions = new Map(subjects.map((subject) => [subject.id, subject.version]))
  return snapshot.clutches
    .map((clutch) => toClutch({ snapshot, clutch, now: scope.ctx.now, version: versions.get(clutch.id) ?? 1 }))
    .sort((a, b) => (a.spawnedAt < b.spawnedAt ? 1 : -1))
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
}: {
  snapshot: RoomSnapshot
  clutch: SnapshotClutch
  now: string
  version: number
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
    nights: state === 'incubating' ? clutchNights(snapshot, { clutch, at: now }) : [],
    version,
  }
}
