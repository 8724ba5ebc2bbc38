import { createHandOver, type HandOver } from './hand-over.ts'

/**
 * How alarms are sent, from the environment; nothing without a secret to sign with and an address that links carry.
 * @throws Error where one half of the mail settings is missing.
 */
export function sendingOf(environment: NodeJS.ProcessEnv): { handOver: HandOver; isMailSetUp: boolean } | undefined {
  const given = (name: string) => environment[name] || undefined
  const [secret, publicUrl] = [given('AUTH_SECRET'), given('PUBLIC_URL')]
  const [smtpUrl, from] = [given('SMTP_URL'), given('MAIL_FROM')]
  if ((smtpUrl === undefined) !== (from === undefined))
    throw new Error('SMTP_URL and MAIL_FROM go together: give both, or neither.')
  if (secret === undefined || publicUrl === undefined) return undefined
  const mail = smtpUrl !== undefined && from !== undefined ? { smtpUrl, from } : undefined
  const mayReachThisMachine = given('LOCAL_WEBHOOKS') === '1'
  return { handOver: createHandOver({ secret, publicUrl, mail, mayReachThisMachine }), isMailSetUp: mail !== undefined }
}
