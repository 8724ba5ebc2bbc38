import type { Gauge, Id, NewGauge } from '@fryward/shared'
import { uuidv7 } from 'uuidv7'
import type { Context } from '../context.ts'
import { invalid, RoomError } from '../errors.ts'
import { type Work, writeInRoom } from '../frame/write-in-room.ts'
import { forgetGauges } from '../readings/known-gauges.ts'
import { assertBand } from './band.ts'
import { viewDevice } from './device-view.ts'
import { viewGauge } from './gauge-view.ts'

export async function createGauge({
  ctx,
  roomId,
  deviceId,
  input,
}: {
  ctx: Context
  roomId: Id
  deviceId: Id
  input: NewGauge
}): Promise<Gauge> {
  return writeInRoom(
    { ctx, roomId, permission: 'manage', changesDay: false },
    async (work) => {
      const device = await viewDevice(work, deviceId)
      if (device.revokedAt) throw new RoomError('wrong_state', `${device.name} was taken out; let a new device in.`)
      // One that was taken out of use leaves its name: put back, it is a gauge of its own from then on.
      if (device.gauges.some(({ key, endedAt }) => key === input.key && endedAt === null))
        throw invalid('key', `${device.name} has a gauge "${input.key}" already; choose another name.`, input.key)
      await assertPlace(work, input.subjectId)
      assertBand(input.quantity, input)
      const id = uuidv7()
      await work.tx.gauge.create({
        data: { ...input, roomId, id, deviceId, channel: await nextChannel(work), createdAt: ctx.now },
      })
      work.audit({ action: 'gauge.create', subjectId: input.subjectId, detail: { gaugeId: id, deviceId, ...input } })
      return id
    },
    viewGauge,
  ).finally(() => forgetGauges(ctx.database))
}

/** A gauge hangs in a tank or a culture that is in use, or in the room. */
async function assertPlace({ tx, roomId }: Work, subjectId: Id): Promise<void> {
  const subject = await tx.subject.findUnique({ where: { roomId_id: { roomId, id: subjectId } } })
  if (!subject || subject.endedAt || !['tank', 'culture', 'room'].includes(subject.kind))
    throw invalid('subjectId', 'Choose a tank or a culture that is in use, or the room itself.', subjectId)
}

// Any number that nothing else locks.
const channelLock = 72_707_371

/** Short numbers, one a gauge of the whole server: rows of readings carry nothing longer. */
async function nextChannel({ tx }: Work): Promise<number> {
  await tx.$executeRaw`SELECT pg_advisory_xact_lock(${channelLock})`
  const { _max } = await tx.gauge.aggregate({ _max: { channel: true } })
  return (_max.channel ?? 0) + 1
}
