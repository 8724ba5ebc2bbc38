import { createHmac } from 'node:crypto'
import {
  type Context,
  type KnownBroker,
  listBrokers,
  markBroker,
  type ReadingsKeeper,
  takeMessage,
} from '@fryward/room'
import { beOneOfMany, type Database } from '@fryward/store'
import type { FastifyBaseLogger } from 'fastify'
import { filtersOf } from './filters.ts'
import { openSubscriber, type Subscriber } from './subscriber.ts'

export type BrokerDesk = {
  /** Settings may have changed. */
  look: () => void
  close: () => Promise<void>
}

type Asked = {
  database: Database
  keeper: ReadingsKeeper
  now: () => string
  secret: string
  mayReachThisMachine: boolean
  log: Pick<FastifyBaseLogger, 'error' | 'warn'>
}
type Listening = { fingerprint: string; filters: string[]; subscriber: Subscriber }

// Any number that nothing else locks.
const lockKey = 72_707_372
const triesEveryMs = 3000
// Settings are looked at when a room says that it has moved on, and this often in any case.
const looksEveryMs = 15_000
const quietMs = 200
const saysEveryMs = 60_000

/** Listens to the brokers of all rooms, in one process among however many there are. */
export function openBrokerDesk({ database, keeper, now, secret, mayReachThisMachine, log }: Asked): BrokerDesk {
  const listening = new Map<string, Listening>()
  const ctx = (): Context => ({ database, actor: { kind: 'system', job: 'broker' }, now: now() })
  let isOurs = false
  let work: Promise<unknown> = Promise.resolve()
  let marks: Promise<unknown> = Promise.resolve()
  let timers: NodeJS.Timeout[] = []
  let soon: NodeJS.Timeout | undefined

  const guarded = (what: string, run: () => Promise<unknown>) =>
    run().catch((error: unknown) => log.error({ err: error, what }, 'the brokers could not be looked after'))
  // One after another: what was so last stands in the end.
  const mark = (roomId: string, state: Parameters<typeof markBroker>[2]) => {
    const at = ctx()
    marks = marks.then(() => guarded('state', () => markBroker(at, roomId, state)))
  }

  const begin = (broker: KnownBroker, formerFilters: string[]): Subscriber => {
    const { roomId, url, username, password, authority, lastConnectedAt } = broker
    return openSubscriber(
      {
        ...{ url, username, password, authority, mayReachThisMachine, formerFilters },
        // At most 23 letters and digits (MQTT 3.1.1, section 3.1.3.1); another server of the same room is another client.
        clientId: `fryward${createHmac('sha256', secret).update(`client ${roomId}`).digest('hex').slice(0, 16)}`,
        filters: filtersOf(broker.topics),
        lastConnectedMs: lastConnectedAt === null ? null : Date.parse(lastConnectedAt),
      },
      {
        now,
        take: ({ at, ...message }) => takeMessage({ ctx: { ...ctx(), now: at }, keeper, roomId, message }),
        onState: (state) => mark(roomId, state),
      },
    )
  }
  const listen = async (broker: KnownBroker) => {
    const { lastConnectedAt: _, ...settings } = broker
    const fingerprint = JSON.stringify(settings)
    const before = listening.get(broker.roomId)
    if (before?.fingerprint === fingerprint) return
    await before?.subscriber.close()
    const filters = filtersOf(broker.topics)
    const former = (before?.filters ?? []).filter((filter) => !filters.includes(filter))
    if (broker.isPasswordLost) mark(broker.roomId, { isConnected: false, trouble: lostPassword })
    else listening.set(broker.roomId, { fingerprint, filters, subscriber: begin(broker, former) })
  }
  const lookNow = async () => {
    if (!isOurs) return
    const brokers = await listBrokers(ctx(), secret)
    const wanted = new Set(brokers.map(({ roomId }) => roomId))
    for (const [roomId, { subscriber }] of listening)
      if (!wanted.has(roomId)) {
        listening.delete(roomId)
        await subscriber.close('forever')
      }
    for (const broker of brokers) if (isOurs) await listen(broker)
  }
  const look = () => {
    work = work.then(() => guarded('settings', lookNow))
  }
  const say = () => {
    for (const [roomId, { subscriber }] of listening) if (subscriber.isConnected()) mark(roomId, { isConnected: true })
  }
  const letGo = () => {
    isOurs = false
    for (const timer of timers) clearInterval(timer)
    const subscribers = [...listening.values()].map(({ subscriber }) => subscriber)
    listening.clear()
    work = Promise.all([work, ...subscribers.map((subscriber) => subscriber.close())])
  }
  const one = beOneOfMany({
    ...{ connectionString: database.connectionString, key: lockKey, everyMs: triesEveryMs },
    onHeld: () => {
      isOurs = true
      timers = [setInterval(look, looksEveryMs), setInterval(say, saysEveryMs)]
      look()
    },
    onLost: letGo,
    onError: (error) => log.warn({ err: error }, 'lost the connection that holds the brokers; trying again'),
  })
  return {
    look: () => {
      if (!isOurs || soon) return
      soon = setTimeout(() => {
        soon = undefined
        look()
      }, quietMs)
    },
    close: async () => {
      clearTimeout(soon)
      await one.close()
      await work
      await marks
    },
  }
}

const lostPassword =
  'The password was kept with another secret of this server and cannot be read any more. Type it again.'
