import { sendingSecretOf } from '@fryward/notify'
import { createHandOver, type HandOver } from './hand-over.ts'
import { createResetMailer, type MailReset } from './send-resets.ts'

/**
 * How alarms and links for new passwords are sent, from the environment; nothing without a secret to sign with and an
 * address that links carry.
 * @throws Error where one half of the mail settings is missing.
 */
export function sendingOf(
  environment: NodeJS.ProcessEnv,
): { handOver: HandOver; isMailSetUp: boolean; mailReset: MailReset | undefined } | undefined {
  const given = (name: string) => environment[name] || undefined
  const [whole, publicUrl] = [given('AUTH_SECRET'), given('PUBLIC_URL')]
  const secret = given('SENDING_SECRET') ?? (whole && sendingSecretOf(whole))
  const [smtpUrl, from] = [given('SMTP_URL'), given('MAIL_FROM')]
  if ((smtpUrl === undefined) !== (from === undefined))
    throw new Error('SMTP_URL and MAIL_FROM go together: give both, or neither.')
  if (secret === undefined || publicUrl === undefined) return undefined
  const mail = smtpUrl !== undefined && from !== undefined ? { smtpUrl, from } : undefined
  const mayReachThisMachine = given('LOCAL_WEBHOOKS') === '1'
  return {
    handOver: createHandOver({ secret, publicUrl, mail, mayReachThisMachine }),
    isMailSetUp: mail !== undefined,
    mailReset: mail && createResetMailer({ mail, publicUrl }),
  }
}

/** How long readings are kept, and who outside is told each minute that this server is awake. */
export function wishesOf(environment: NodeJS.ProcessEnv): { keepMonths: number; heartbeatUrl: string | undefined } {
  const keepMonths = Number(environment.READINGS_KEEP_MONTHS || 0)
  // The newest two months are still written to: what is late may be a month old.
  if (!Number.isInteger(keepMonths) || keepMonths < 0 || keepMonths === 1)
    throw new Error('READINGS_KEEP_MONTHS is 0 for ever, or a whole number of months from 2 on.')
  return { keepMonths, heartbeatUrl: environment.HEARTBEAT_URL || undefined }
}
