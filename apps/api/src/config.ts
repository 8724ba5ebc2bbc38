import { wantedInstead } from '@fryward/shared'
import { z } from 'zod'

/** What the API reads from its environment. A wrong value stops the start with one sentence a line. */
export const ApiConfigSchema = z.object({
  HOST: z.string().default('127.0.0.1'),
  PORT: z.coerce.number().int().min(0).max(65_535).default(3000),
  /** Where people reach the server, such as https://fry.example; links and trusted origins come from it. */
  PUBLIC_URL: z.url({ protocol: /^https?$/ }).optional(),
  /** Addresses of reverse proxies whose X-Forwarded-For is believed, separated by commas. */
  TRUSTED_PROXIES: z.string().optional(),
  TLS_CERT: z.string().optional(),
  TLS_KEY: z.string().optional(),
  DATABASE_URL: z.string().min(1),
  /** Inner address of the dashboard, which this server passes pages on to. */
  WEB_URL: z.url().optional(),
  AUTH_SECRET: z.string().min(32, 'a text of at least 32 characters'),
  DATA_DIR: z.string().optional(),
  /** Whether the brokers that rooms name may run on this machine itself. */
  LOCAL_BROKERS: z.enum(['0', '1']).default('0'),
  /** Opens /metrics. */
  METRICS_TOKEN: z.string().min(16).optional(),
  /** Whom mail is from, where the scheduler sends some. */
  MAIL_FROM: z.string().optional(),
  /** Requests a minute from one address. */
  REQUESTS_PER_MINUTE: z.coerce.number().int().min(60).default(1200),
  LOG_LEVEL: z.enum(['fatal', 'error', 'warn', 'info', 'debug', 'silent']).default('info'),
})
export type ApiConfig = z.infer<typeof ApiConfigSchema>

/** @throws Error whose message names every wrong setting and what is allowed. */
export function readConfig(environment: NodeJS.ProcessEnv): ApiConfig {
  const given = Object.fromEntries(Object.entries(environment).filter(([, value]) => value !== ''))
  const parsed = ApiConfigSchema.safeParse(given, { error: wantedInstead })
  if (parsed.success) return parsed.data
  throw new Error(
    parsed.error.issues.map((issue) => `Setting ${issue.path.join('.')} is to be ${issue.message}.`).join('\n'),
  )
}
