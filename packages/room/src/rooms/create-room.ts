import type { Room, RoomSetup } from '@fryward/shared'
import type { Transaction } from '@fryward/store'
import { uuidv7 } from 'uuidv7'
import { insertConcentrate } from '../concentrates/create-concentrate.ts'
import type { Context } from '../context.ts'
import { insertCulture } from '../cultures/create-culture.ts'
import { RoomError } from '../errors.ts'
import { findAnswer } from '../frame/idempotency.ts'
import { personOf } from '../frame/person-of.ts'
import { transact } from '../frame/transact.ts'
import { type Work, workInRoom } from '../frame/write-in-room.ts'
import { mayCreateRooms } from '../people/get-me.ts'
import { insertTank } from '../tanks/create-tank.ts'
import { insertFirstAnimals, type VesselIds } from './first-animals.ts'
import { getRoomRow } from './room-view.ts'

/** Sets up a room with its first vessels, all or nothing, and opens its first lists. */
export async function createRoom({
  ctx,
  input,
  isDemo = false,
}: {
  ctx: Context
  input: RoomSetup
  isDemo?: boolean
}): Promise<Room> {
  return transact(ctx, async (tx) => {
    const userId = personOf(ctx.actor)
    if (!isDemo && !(await mayCreateRooms(tx, userId)))
      throw new RoomError('not_allowed', 'New rooms are set up by an owner of this server or of one of its rooms.')
    const replay = await findAnswer<Room>(tx, ctx)
    if (replay) return replay.answer
    const roomId = await insertRoom(tx, { ctx, input, isDemo, userId })
    const setUp = async (work: Work): Promise<void> => {
      const concentrateId = input.concentrate ? await insertConcentrate(work, input.concentrate) : null
      const ids: VesselIds = { tank: new Map(), culture: new Map() }
      for (const tank of input.tanks) ids.tank.set(tank.name, await insertTank(work, tank))
      for (const culture of input.cultures)
        ids.culture.set(culture.name, await insertCulture(work, { ...culture, concentrateId, parentCultureId: null }))
      await insertFirstAnimals(work, input, ids)
      const detail = { name: input.name, timeZone: input.timeZone }
      work.audit({ action: 'room.create', detail, why: 'the room was set up' })
    }
    return workInRoom({ tx, ctx, roomId, permission: 'own' }, setUp, getRoomRow)
  })
}

async function insertRoom(
  tx: Transaction,
  { ctx, input, isDemo, userId }: { ctx: Context; input: RoomSetup; isDemo: boolean; userId: string },
): Promise<string> {
  const { concentrate: _concentrate, tanks: _tanks, cultures: _cultures, ...rest } = input
  const { pairs: _pairs, batches: _batches, groups: _groups, ...room } = rest
  const roomId = uuidv7()
  await tx.room.create({ data: { id: roomId, ...room, isDemo, createdAt: ctx.now } })
  await tx.subject.create({ data: { roomId, id: roomId, kind: 'room', name: input.name, createdAt: ctx.now } })
  await tx.membership.create({ data: { roomId, userId, role: 'owner', joinedAt: ctx.now } })
  return roomId
}
