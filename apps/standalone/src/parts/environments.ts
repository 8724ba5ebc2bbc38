import { join } from 'node:path'
import { publicUrlOf } from '@fryward/api/public-url'
import { sendingSecretOf } from '@fryward/notify'
import type { Settings } from '../settings.ts'
import type { Tls } from '../tls/prepare-tls.ts'
import { readOrMakeSecret } from '../write-file.ts'

export type EnvironmentPlan = {
  connectionString: string
  settings: Settings
  tls: Tls | undefined
  webPort: number
  isDevelopment: boolean
  root: string
}

type Told = Record<string, string | undefined>

/** Settings that open something: none of them reaches a part through the machine's environment. */
const secrets = [
  'DATABASE_URL',
  'AUTH_SECRET',
  'SENDING_SECRET',
  'TLS_KEY',
  'POSTGRES_PASSWORD',
  'SMTP_URL',
  'METRICS_TOKEN',
]

/**
 * What each part is told: the machine's environment (PATH, TZ, proxies) without its secrets, and of these only what the
 * part works with. The dashboard draws pages, so it gets none; the scheduler signs what it sends.
 */
export function partEnvironments(
  plan: EnvironmentPlan,
): Record<'api' | 'scheduler' | 'web' | 'demo', Record<string, string>> {
  const { settings, connectionString, tls, webPort, isDevelopment, root } = plan
  const everybody: Told = {
    ...process.env,
    ...Object.fromEntries(secrets.map((name) => [name, undefined])),
    LOG_LEVEL: settings.LOG_LEVEL,
    NODE_ENV: isDevelopment ? 'development' : 'production',
    NEXT_TELEMETRY_DISABLED: '1',
  }
  const withDatabase: Told = { ...everybody, DATABASE_URL: connectionString }
  const authSecret = settings.AUTH_SECRET ?? readOrMakeSecret(join(settings.DATA_DIR, 'secrets', 'auth-secret'))
  return {
    web: set({ ...everybody, WEB_PORT: String(webPort), WEB_DIR: join(root, 'apps/web') }),
    scheduler: set({
      ...withDatabase,
      SENDING_SECRET: sendingSecretOf(authSecret),
      PUBLIC_URL: publicUrlOf({ ...settings, TLS_CERT: tls?.certFile, TLS_KEY: tls?.keyFile }),
      SMTP_URL: settings.SMTP_URL,
      MAIL_FROM: settings.MAIL_FROM,
      LOCAL_WEBHOOKS: settings.LOCAL_WEBHOOKS,
      HEARTBEAT_URL: settings.HEARTBEAT_URL,
      READINGS_KEEP_MONTHS: String(settings.READINGS_KEEP_MONTHS),
    }),
    demo: set({ ...withDatabase, DATA_DIR: settings.DATA_DIR }),
    api: set({
      ...withDatabase,
      HOST: settings.HOST,
      PORT: String(settings.PORT),
      PUBLIC_URL: settings.PUBLIC_URL,
      TRUSTED_PROXIES: settings.TRUSTED_PROXIES,
      REQUESTS_PER_MINUTE: String(settings.REQUESTS_PER_MINUTE),
      TLS_CERT: tls?.certFile,
      TLS_KEY: tls?.keyFile,
      DATA_DIR: settings.DATA_DIR,
      AUTH_SECRET: authSecret,
      MAIL_FROM: settings.MAIL_FROM,
      LOCAL_BROKERS: settings.LOCAL_BROKERS,
      METRICS_TOKEN: settings.METRICS_TOKEN,
      WEB_URL: `http://127.0.0.1:${webPort}`,
    }),
  }
}

/** Never an unset setting as the text "undefined". */
function set(told: Told): Record<string, string> {
  return Object.fromEntries(Object.entries(told).filter((pair): pair is [string, string] => pair[1] !== undefined))
}
