import type { Id, NewPhone, Reach } from '@fryward/shared'
import { uuidv7 } from 'uuidv7'
import type { Context } from '../context.ts'
import { invalid } from '../errors.ts'
import { personOf } from '../frame/person-of.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { type Reaching, viewReach } from './reach-view.ts'

// More than anybody carries; each is a request into the world at every alarm.
const mostPhones = 10

/** Pushes alarms of the room to a browser of whoever asks. The same browser again, under new keys, takes its own place. */
export async function addPhone({
  ctx,
  roomId,
  reaching,
  input,
}: {
  ctx: Context
  roomId: Id
  reaching: Reaching
  input: NewPhone
}): Promise<Reach> {
  const userId = personOf(ctx.actor)
  return writeInRoom(
    { ctx, roomId, permission: 'read', changesDay: false },
    async (work) => {
      // Whoever signs in at a shared tablet takes it over: what is pushed there is theirs from then on.
      await work.tx.pushPhone.deleteMany({ where: { roomId, endpoint: input.endpoint } })
      if ((await work.tx.pushPhone.count({ where: { roomId, userId } })) >= mostPhones)
        throw invalid('name', `You have ${mostPhones} phones here already; take one off first.`, input.name)
      const id = uuidv7()
      await work.tx.pushPhone.create({ data: { roomId, id, userId, ...input, createdAt: ctx.now } })
      work.audit({ action: 'phone.add', detail: { phoneId: id, name: input.name } })
    },
    (work) => viewReach(work, reaching),
  )
}
