import { inTransaction, lockWord } from '@fryward/store'
import { uuidv7 } from 'uuidv7'
import type { Context } from '../context.ts'
import { RoomError } from '../errors.ts'
import { inAnHour, resetValidMs } from './open-reset.ts'
import { insertTry, type Knock } from './sign-in-tries.ts'

// common practice: enough for a mail that went astray, too few to fill somebody's mailbox or to send mail about the world.
const mostForEmail = 3
const mostFromAddress = 10

/**
 * Notes that a new password was asked for. Nothing here looks at accounts: whether there is one is found out by whoever sends
 * the mail, so neither the answer nor the time it takes says anything of it.
 */
export async function askForNewPassword({ ctx, knock }: { ctx: Context; knock: Knock }): Promise<void> {
  const { email, address } = knock
  await inTransaction(ctx.database, async (tx) => {
    // Of several at once each counts the ones before it.
    await lockWord(tx, `reset/${email}`)
    const asked = { outcome: 'reset_asked', at: { gt: new Date(Date.parse(ctx.now) - resetValidMs) } }
    if ((await tx.signInTry.count({ where: { ...asked, email } })) >= mostForEmail)
      throw new RoomError(
        'too_many_requests',
        'A new password was asked for with this email three times within the hour. Look for the mail among unwanted mail too; after an hour, ask again.',
      )
    if ((await tx.signInTry.count({ where: { ...asked, address } })) >= mostFromAddress)
      throw new RoomError(
        'too_many_requests',
        'New passwords were asked for from here ten times within the hour. After an hour, ask again.',
      )
    await insertTry(tx, { now: ctx.now, knock, outcome: 'reset_asked' })
    await tx.passwordReset.create({
      data: { id: uuidv7(), email, address, dueAt: ctx.now, expiresAt: inAnHour(ctx) },
    })
  })
}
