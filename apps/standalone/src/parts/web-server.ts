// The dashboard's process: Next on an inner port of this machine, reached only through the front door.
import { createServer } from 'node:http'
import { createRequire } from 'node:module'
import { join } from 'node:path'
import { z } from 'zod'

const environment = z
  .object({ WEB_DIR: z.string(), WEB_PORT: z.coerce.number(), NODE_ENV: z.enum(['production', 'development']) })
  .parse(process.env)

process.on('SIGTERM', () => process.exit(0))

type RequestListener = Parameters<typeof createServer>[1]
type NextServer = {
  prepare(): Promise<void>
  getRequestHandler(): NonNullable<RequestListener>
  getUpgradeHandler(): (...upgrade: unknown[]) => void
}
type NextOptions = { dev: boolean; dir: string; hostname: string; port: number; httpServer: unknown }

// Next belongs to the dashboard's package; it is loaded from there.
const createNext: (options: NextOptions) => NextServer = createRequire(join(environment.WEB_DIR, 'package.json'))(
  'next',
)

const hostname = '127.0.0.1'
const server = createServer()
const dashboard = createNext({
  dev: environment.NODE_ENV === 'development',
  dir: environment.WEB_DIR,
  hostname,
  port: environment.WEB_PORT,
  httpServer: server,
})
await dashboard.prepare()
server.on('request', dashboard.getRequestHandler())
if (environment.NODE_ENV === 'development') server.on('upgrade', dashboard.getUpgradeHandler())
server.listen(environment.WEB_PORT, hostname, () => {
  process.send?.({ ready: true, url: `http://${hostname}:${environment.WEB_PORT}` })
})
