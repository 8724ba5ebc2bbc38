import { networkInterfaces } from 'node:os'

type Asked = {
  HOST: string
  PORT: number
  PUBLIC_URL?: string | undefined
  TLS_CERT?: string | undefined
  TLS_KEY?: string | undefined
}

/**
 * The address that links carry. A server that everybody on the network reaches, and that nobody gave a name, sends them to
 * its address there: "localhost" would be each phone's own.
 */
export function publicUrlOf(config: Asked, networkAddresses = addressesOnTheNetwork()): string {
  if (config.PUBLIC_URL) return config.PUBLIC_URL
  const isHttps = config.TLS_CERT !== undefined && config.TLS_KEY !== undefined
  const isOpen = config.HOST === '0.0.0.0' || config.HOST === '::'
  const named = isOpen ? networkAddresses[0] : config.HOST
  const host = named === undefined || named === '127.0.0.1' || named === '::1' ? 'localhost' : named
  return `${isHttps ? 'https' : 'http'}://${host.includes(':') ? `[${host}]` : host}:${config.PORT}`
}

/** IPv4 only: that is what every phone in a house has. */
const addressesOnTheNetwork = (): string[] =>
  Object.values(networkInterfaces())
    .flatMap((cards) => cards ?? [])
    .filter((card) => !card.internal && card.family === 'IPv4')
    .map((card) => card.address)
