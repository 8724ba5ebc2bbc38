import { createMailSender, createPushSender, createWebhookSender, type Outcome } from '@fryward/notify'
import type { Outgoing } from '@fryward/room'
import { type SaidMessage, sayMessage } from '@fryward/words'

/** What sending needs to know of this server. */
export type Sending = {
  /** Signs pushes and webhooks: `sendingSecretOf` the server's own. */
  secret: string
  publicUrl: string
  mail?: { smtpUrl: string; from: string } | undefined
  /** Whether pushes and webhooks may go to this machine itself. */
  mayReachThisMachine?: boolean
  /** Certificate authority of a push service that is not a public one. */
  trust?: string
}

/** Puts one message into words and hands it over once. */
export type HandOver = (outgoing: Outgoing, now: string) => Promise<Outcome>

// An alarm that a phone hears of an hour late has been said anew since.
const keepS = 3600

export function createHandOver({ secret, publicUrl, mail, mayReachThisMachine = false, trust }: Sending): HandOver {
  const sendMail = mail && createMailSender(mail)
  const contact = publicUrl.startsWith('https:') ? publicUrl : `mailto:${mail?.from ?? 'nobody@localhost'}`
  const sendPush = createPushSender({ secret, contact, mayReachThisMachine, ...(trust && { trust }) })
  const sendWebhook = createWebhookSender({ secret, mayReachThisMachine })
  return async (outgoing, now) => {
    const address = `${publicUrl}/rooms/${outgoing.roomId}`
    const { room, occasion, ordinal, alarm } = outgoing
    const said = sayMessage({ occasion, ordinal, alarm, roomName: room.name, address }, now, room)
    const { to, id } = outgoing
    if (to.way === 'webhook')
      return sendWebhook({ ...to, messageId: id, body: bodyOf(outgoing, { said, now }), at: new Date(now) })
    if (to.way === 'push')
      return sendPush({
        ...{ address: to, keepS, topic: (alarm?.id ?? id).replaceAll('-', '') },
        payload: JSON.stringify({ title: said.title, body: said.text.split('\n\n')[1] ?? '', url: address }),
      })
    if (!sendMail)
      return {
        state: 'failed',
        isFinal: true,
        detail: 'This server sends no mail: SMTP_URL and MAIL_FROM are not set.',
      }
    return sendMail({ to: to.mail, messageId: id, subject: said.title, text: said.text })
  }
}

/** For a program: the facts, and the words beside them. */
function bodyOf(
  { roomId, room, occasion, ordinal, alarm }: Outgoing,
  { said, now }: { said: SaidMessage; now: string },
) {
  return JSON.stringify({
    type: `alarm.${occasion}`,
    timestamp: now,
    data: { room: { id: roomId, name: room.name }, ordinal, alarm, title: said.title, text: said.text },
  })
}
