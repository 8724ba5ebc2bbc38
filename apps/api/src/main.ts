import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { foodThread, readingsThread } from '@fryward/room'
import { openDatabase } from '@fryward/store'
import type { FastifyInstance } from 'fastify'
import { createApi } from './app.ts'
import { readyClaimCode } from './claim-code.ts'
import { type ApiConfig, readConfig } from './config.ts'
import { readSpace, watchDisk } from './disk.ts'
import { publicUrlOf } from './public-url.ts'
import { version } from './version.ts'

/** Starts the API from its environment and tells the parent process, when there is one. */
async function main(): Promise<void> {
  const config = readConfig(process.env)
  const database = openDatabase({ connectionString: config.DATABASE_URL })
  const app = await createApi({
    database,
    authSecret: config.AUTH_SECRET,
    publicUrl: publicUrlOf(config),
    version,
    webUrl: config.WEB_URL,
    tls: tlsOf(config),
    trustedProxies: config.TRUSTED_PROXIES?.split(',').map((address) => address.trim()),
    disk: config.DATA_DIR ? watchDisk(readSpace(config.DATA_DIR)) : undefined,
    troublesFile: config.DATA_DIR ? join(config.DATA_DIR, 'logs', 'troubles.json') : undefined,
    photosFolder: config.DATA_DIR ? join(config.DATA_DIR, 'photos') : undefined,
    foodThinker: foodThread(),
    keeper: (onEnd) => readingsThread(database, onEnd),
    brokers: { mayReachThisMachine: config.LOCAL_BROKERS === '1' },
    metricsToken: config.METRICS_TOKEN,
    isMailSetUp: config.MAIL_FROM !== undefined,
    requestsPerMinute: config.REQUESTS_PER_MINUTE,
    logLevel: config.LOG_LEVEL,
  })
  serveAuthority(app, config)
  const url = await app.listen({ host: config.HOST, port: config.PORT })
  let isStopping = false
  const stop = async () => {
    if (isStopping) return
    isStopping = true
    await app.close()
    await database.close()
    process.exit(0)
  }
  process.on('SIGTERM', () => void stop())
  process.on('SIGINT', () => void stop())
  process.on('disconnect', () => void stop())
  const claimCode = await readyClaimCode({ database, dataDir: config.DATA_DIR, log: app.log })
  if (claimCode) app.log.info({ claimCode }, 'this server has no owner yet; claim it at /claim with this code')
  // Whoever started this may stop it from now on.
  process.send?.({ ready: true, url, claimCode })
}

function tlsOf({ TLS_CERT, TLS_KEY }: ApiConfig): { cert: Buffer; key: Buffer } | undefined {
  if (!TLS_CERT && !TLS_KEY) return undefined
  if (!TLS_CERT || !TLS_KEY) throw new Error('TLS_CERT and TLS_KEY go together: give both files, or neither.')
  return { cert: readFileSync(TLS_CERT), key: readFileSync(TLS_KEY) }
}

/** The certificate of the room's own authority, for a phone to install; it is public, its key never leaves the disk. */
function serveAuthority(app: FastifyInstance, { DATA_DIR }: ApiConfig): void {
  const file = DATA_DIR ? join(DATA_DIR, 'tls', 'ca.crt') : ''
  if (!existsSync(file)) return
  app.get('/fryward-ca.crt', { schema: { hide: true } }, async (_request, reply) =>
    reply
      .type('application/x-x509-ca-cert')
      .serializer((text: string) => text)
      .send(readFileSync(file, 'utf8')),
  )
}

main().catch((error: unknown) => {
  // Before there is a logger, the terminal is all there is.
  process.stderr.write(`${error instanceof Error ? oneLine(error) : String(error)}\n`)
  process.exit(1)
})

/** What kind of error it is stands in front, so that the supervisor finds the line and tells it. */
function oneLine({ name, message }: Error): string {
  const told = message.replaceAll(/\s+/g, ' ').trim()
  return name === 'Error' ? told : `${name}: ${told}`
}
