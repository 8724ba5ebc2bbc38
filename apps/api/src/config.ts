import { networkInterfaces } from 'node:os'
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
  AUTH_SECRET: z.string().min(32, 'AUTH_SECRET needs at least 32 characters'),
  DATA_DIR: z.string().optional(),
  /** Requests a minute from one address. */
  REQUESTS_PER_MINUTE: z.coerce.number().int().min(60).default(1200),
  LOG_LEVEL: z.enum(['fatal', 'error', 'warn', 'info', 'debug', 'silent']).default('info'),
})
export type ApiConfig = z.infer<typeof ApiConfigSchema>

/** @throws Error whose message names every wrong setting and what is allowed. */
export function readConfig(environment: NodeJS.ProcessEnv): ApiConfig {
  const given = Object.fromEntries(Object.entries(environment).filter(([, value]) => value !== ''))
  const parsed = ApiConfigSchema.safeParse(given)
  if (parsed.success) return parsed.data
  throw new Error(parsed.error.issues.map((issue) => `Setting ${issue.path.join('.')}: ${issue.message}.`).join('\n'))
}

export const isHttps = (config: Pick<ApiConfig, 'TLS_CERT' | 'TLS_KEY'>): boolean =>
  config.TLS_CERT !== undefined && config.TLS_KEY !== undefined

type Asked = Pick<ApiConfig, 'PUBLIC_URL' | 'HOST' | 'PORT' | 'TLS_CERT' | 'TLS_KEY'>

/**
 * The address that links carry. A server that everybody on the network reaches, and that nobody gave a name, sends them to
 * its address there: "localhost" would be each phone's own.
 */
export function publicUrlOf(config: Asked, networkAddresses = addressesOnTheNetwork()): string {
  if (config.PUBLIC_URL) return config.PUBLIC_URL
  const isOpen = config.HOST === '0.0.0.0' || config.HOST === '::'
  const named = isOpen ? networkAddresses[0] : config.HOST
  const host = named === undefined || named === '127.0.0.1' || named === '::1' ? 'localhost' : named
  return `${isHttps(config) ? 'https' : 'http'}://${host.includes(':') ? `[${host}]` : host}:${config.PORT}`
}

/** IPv4 only: that is what every phone in a house has. */
const addressesOnTheNetwork = (): string[] =>
  Object.values(networkInterfaces())
    .flatMap((cards) => cards ?? [])
    .filter((card) => !card.internal && card.family === 'IPv4')
    .map((card) => card.address)
