import type { Id, Message } from '@fryward/shared'
import type { Context } from '../context.ts'
import { RoomError } from '../errors.ts'
import { personOf } from '../frame/person-of.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { addressesOf, webhookOf } from '../messages/addresses.ts'
import { viewMessages } from '../messages/list-messages.ts'
import { write } from '../messages/tell-alarms.ts'

/** Writes one message for each way that reaches whoever asks, and for owners one to the webhook; they go out within a minute. */
export async function sendTrial({
  ctx,
  roomId,
  isMailSetUp,
}: {
  ctx: Context
  roomId: Id
  isMailSetUp: boolean
}): Promise<Message[]> {
  return writeInRoom(
    { ctx, roomId, permission: 'read', changesDay: false },
    async (work) => {
      const asked = { tx: work.tx, roomId, isMailSetUp }
      const own = await addressesOf(asked, [personOf(ctx.actor)])
      const addresses = [...own, ...(work.role === 'owner' ? await webhookOf(asked) : [])]
      if (addresses.length === 0)
        throw new RoomError('wrong_state', 'Nothing reaches you yet: let a phone be pushed to, or have mail set up.')
      await write(work, { alarmId: null, occasion: 'trial', ordinal: work.revision, addresses })
      work.audit({ action: 'reach.try', detail: { number: addresses.length } })
    },
    (work) => viewMessages(work, { occasion: 'trial', ordinal: work.revision }),
  )
}
