import { randomUUID } from 'node:crypto'
import rateLimit from '@fastify/rate-limit'
import { type FoodThinker, keepReadingsHere, type ReadingsKeeper, thinkHere } from '@fryward/room'
import type { Database } from '@fryward/store'
import fastify, { type FastifyInstance } from 'fastify'
import { validatorCompiler } from 'fastify-type-provider-zod'
import { backupsOf } from './backups.ts'
import { openBrokerDesk } from './brokers/broker-desk.ts'
import { isDatabaseAway } from './database-away.ts'
import type { Disk } from './disk.ts'
import { type FoodDesk, openFoodDesk } from './food-desk.ts'
import { loggedRequest } from './logged-request.ts'
import { openPhotoStore } from './photo-store.ts'
import { cleanText } from './plugins/clean-text.ts'
import { devices } from './plugins/devices.ts'
import { diskGuard } from './plugins/disk-guard.ts'
import { documentation } from './plugins/documentation.ts'
import { eventStreams } from './plugins/event-streams.ts'
import { metrics } from './plugins/metrics.ts'
import { pages } from './plugins/pages.ts'
import { problems, sendUnreadableAddress } from './plugins/problems.ts'
import { roomNotices } from './plugins/room-notices.ts'
import { safeHeaders } from './plugins/safe-headers.ts'
import { sameOrigin } from './plugins/same-origin.ts'
import { session } from './plugins/session.ts'
import { steadyBodies } from './plugins/steady-bodies.ts'
import { registerRoutes } from './routes/register.ts'
import { createAuth } from './sign-in/auth.ts'

export type ApiOptions = {
  database: Database
  authSecret: string
  /** Address that links carry and sign-in trusts. */
  publicUrl: string
  version: string
  /** The one clock. */
  now?: () => string
  /** Inner address of the dashboard; without it only the API answers. */
  webUrl?: string | undefined
  tls?: { cert: Buffer; key: Buffer } | undefined
  trustedProxies?: string[] | undefined
  /** How much is logged; nothing without it. */
  logLevel?: string
  /** Folder that photos are kept in; without it this server keeps none. */
  photosFolder?: string | undefined
  /** The disk that everything is kept on; not looked at without it. */
  disk?: Disk | undefined
  /** Where the supervisor keeps what ended by itself. */
  troublesFile?: string | undefined
  /** Who works out the food of rooms as they change; without it questions are answered here, and nothing is planned. */
  foodThinker?: FoodThinker | undefined
  /** Who keeps what devices send, and whom it tells that it had to begin anew; this thread without it. */
  keeper?: ((onEnd: (error: Error) => void) => ReadingsKeeper) | undefined
  /** Listens to the brokers that rooms name, which may run on this machine itself or not; to none without it. */
  brokers?: { mayReachThisMachine: boolean } | undefined
  /** Who brings it reads `/metrics`; nobody without one. */
  metricsToken?: string | undefined
  /** Whether the scheduler of this server sends mail. */
  isMailSetUp?: boolean
  /** Requests a minute from one address. */
  requestsPerMinute?: number
  /** How long somebody is waited for who has begun to send or to read, and does no more of it. */
  patienceMs?: number
}

/** Wires the front door: plugins, then routes, then pages. It listens to nothing yet. */
export async function createApi(options: ApiOptions): Promise<FastifyInstance> {
  const { database, publicUrl, version, now = () => new Date().toISOString(), patienceMs = 30_000 } = options
  const app = fastify({
    logger: options.logLevel ? { level: options.logLevel, serializers: { req: loggedRequest } } : false,
    genReqId: () => randomUUID(),
    trustProxy: options.trustedProxies ?? false,
    // What each route takes is said by the table of routes.
    bodyLimit: 1024,
    // A slow phone gets its photo through in this; what stalls is cut off sooner.
    requestTimeout: 300_000,
    routerOptions: { maxParamLength: 200 },
    frameworkErrors: sendUnreadableAddress,
    ...(options.tls ? { https: options.tls } : {}),
  }) as unknown as FastifyInstance
  app.setValidatorCompiler(validatorCompiler)
  // Answers are made by use cases with the contract's types; tests hold every one against its schema.
  app.setSerializerCompiler(() => (data) => JSON.stringify(data))

  app.removeContentTypeParser('text/plain')

  await app.register(problems)
  await app.register(steadyBodies, { patienceMs })
  // A browser told to insist on HTTPS would lock itself out once a certificate of our own making is replaced.
  await app.register(safeHeaders, { isStrictTransport: publicUrl.startsWith('https:') && options.tls === undefined })
  await app.register(rateLimit, { max: options.requestsPerMinute ?? 1200, timeWindow: '1 minute' })
  await app.register(sameOrigin, { publicUrl })
  await app.register(diskGuard, { disk: options.disk ?? null })
  await app.register(cleanText)
  await app.register(documentation, { version })
  await app.register(session, {
    auth: createAuth({ database, secret: options.authSecret, publicUrl, onError: toLog(app) }),
    database,
    now,
    publicUrl,
    secret: options.authSecret,
  })
  await app.register(devices, { database })
  await app.register(metrics, { database, token: options.metricsToken })
  await app.register(roomNotices, { connectionString: database.connectionString })
  await app.register(eventStreams, { patienceMs })
  const keeper = keeperOf(app, options)
  await registerRoutes(app, {
    publicUrl,
    version,
    secret: options.authSecret,
    photos: options.photosFolder ? openPhotoStore(options.photosFolder) : null,
    disk: options.disk ?? null,
    troublesFile: options.troublesFile ?? null,
    isMailSetUp: options.isMailSetUp ?? false,
    food: foodDeskOf(app, { ...options, now }),
    keeper,
    backups: backupsOf({ database, photosFolder: options.photosFolder, log: app.log }),
  })
  listenToBrokers(app, { ...options, now, keeper })
  if (options.webUrl) await app.register(pages, { webUrl: options.webUrl })
  return app
}

/** A database that is away is answered as that, and each part's own log says it; the library would say it at every request. */
const toLog =
  (app: FastifyInstance) =>
  (message: string, details: unknown[]): void => {
    if (!details.some(isDatabaseAway)) app.log.error({ details }, `sign-in: ${message}`)
  }

// A round's sign-offs come within minutes; a plan a few seconds after the first of them is soon enough. common practice
const quietMs = 5000

function foodDeskOf(
  app: FastifyInstance,
  { database, now, foodThinker }: Pick<ApiOptions, 'database' | 'foodThinker'> & { now: () => string },
): FoodDesk {
  if (!foodThinker) return { thinker: thinkHere, want: () => undefined, close: async () => undefined }
  const desk = openFoodDesk({
    thinker: foodThinker,
    quietMs,
    ctx: () => ({ database, actor: { kind: 'system', job: 'food' }, now: now() }),
    onError: (error, roomId) => app.log.error({ err: error, roomId }, 'the food of a room could not be planned'),
  })
  app.hearOfRooms((roomId) => {
    if (roomId !== null) desk.want(roomId)
  })
  app.addHook('preClose', () => desk.close())
  return desk
}

function keeperOf(app: FastifyInstance, { database, keeper }: ApiOptions): ReadingsKeeper {
  const kept = keeper?.((error) => app.log.error({ err: error }, 'readings are kept by a new thread'))
  if (!kept) return keepReadingsHere(database)
  // Once nobody is answered any more.
  app.addHook('onClose', () => kept.close())
  return kept
}

function listenToBrokers(
  app: FastifyInstance,
  {
    database,
    keeper,
    now,
    authSecret,
    brokers,
  }: Omit<ApiOptions, 'keeper'> & { keeper: ReadingsKeeper; now: () => string },
): void {
  if (!brokers) return
  const desk = openBrokerDesk({ database, keeper, now, secret: authSecret, log: app.log, ...brokers })
  app.hearOfRooms(() => desk.look())
  app.addHook('preClose', () => desk.close())
}
