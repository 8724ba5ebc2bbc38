import { createMailSender, type MailSettings, type Outcome } from '@fryward/notify'
import { type Context, claimResets, markReset, type OutgoingReset, resetLink } from '@fryward/room'
import { sayReset } from '@fryward/words'
import type { TickLog } from './tick-log.ts'

/** Hands one link for a new password over to its person's mailbox. */
export type MailReset = (reset: OutgoingReset) => Promise<Outcome>

export function createResetMailer({ mail, publicUrl }: { mail: MailSettings; publicUrl: string }): MailReset {
  const sendMail = createMailSender(mail)
  return ({ id, email, name, token, address }) => {
    const { title, text } = sayReset({ name, address, publicUrl, link: resetLink(publicUrl, token) })
    return sendMail({ to: email, messageId: id, subject: title, text })
  }
}

/** Mails the links for new passwords that were asked for. */
export async function sendResets({
  ctx,
  mailReset,
  log,
}: {
  ctx: () => Context
  mailReset: MailReset
  log: TickLog
}): Promise<number> {
  const outgoing = await claimResets(ctx())
  await Promise.all(
    outgoing.map(async (reset) => {
      const outcome = await mailReset(reset)
      if (outcome.state !== 'sent') log.warn({ reset: reset.id, ...outcome }, 'a new password was not surely mailed')
      await markReset(ctx(), reset, outcome)
    }),
  )
  return outgoing.length
}
