import { createTransport } from 'nodemailer'
import { isBeforeSending, messageOf, type Outcome, oneLine, patienceMs } from '../outcome.ts'

/** `smtpUrl`: smtp:// or smtps:// with user, password, host and port; `from`: whom the mail is from. */
export type MailSettings = { smtpUrl: string; from: string }

type Mailed = { to: string; messageId: string; subject: string; text: string }

/** Hands mail to the server that the settings name. The message id is the message's own, so that a mail that comes twice is known. */
export function createMailSender({ smtpUrl, from }: MailSettings): (mailed: Mailed) => Promise<Outcome> {
  const transport = createTransport(smtpUrl, {
    from,
    ...{ connectionTimeout: patienceMs, greetingTimeout: patienceMs, socketTimeout: patienceMs },
  })
  const host = /@([^\s>]+)>?\s*$/.exec(from)?.[1] ?? 'localhost'
  return async ({ to, messageId, subject, text }) => {
    try {
      const { response } = await transport.sendMail({ to, subject, text, messageId: `<${messageId}@${host}>` })
      return { state: 'sent', detail: oneLine(response) }
    } catch (error) {
      return outcomeOf(error)
    }
  }
}

// Before the letter itself is begun: signing in, who it is from, whom it is for.
const beforeTheLetter = new Set(['EAUTH', 'EENVELOPE', 'EDNS', 'ETLS', 'EPROTOCOL'])

/**
 * What the server refused with a code was not taken. A connection that broke once it stood may have carried the letter, so
 * nobody knows.
 */
function outcomeOf(error: unknown): Outcome {
  const detail = messageOf(error)
  const { code, responseCode, cause } = (error ?? {}) as { code?: string; responseCode?: number; cause?: unknown }
  if (typeof responseCode === 'number')
    return { state: 'failed', detail, isFinal: responseCode >= 500 && code !== 'EAUTH' }
  if (beforeTheLetter.has(String(code)) || isRefused(error) || isBeforeSending(cause))
    return { state: 'failed', detail, isFinal: false }
  return { state: 'unknown', detail }
}

const isRefused = (error: unknown): boolean =>
  isBeforeSending(error) || /ECONNREFUSED|ENOTFOUND|EHOSTUNREACH|Greeting never received/.test(messageOf(error))
