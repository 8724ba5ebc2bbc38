import type { Writable } from 'node:stream'
import { type IConnackPacket, type IPublishPacket, type ISubscriptionGrant, MqttClient } from 'mqtt'
import { inTurn } from './in-turn.ts'
import { type Address, openStream } from './open-stream.ts'
import { troubleOf } from './trouble.ts'

export type Subscription = Address & {
  username: string | null
  password: string | null
  /** The same at every start, so that the broker keeps for this server what it misses. */
  clientId: string
  /** What is listened to, and what was before and is no more. */
  filters: string[]
  formerFilters: string[]
  /** When this server last was connected, in milliseconds; none where it never was. */
  lastConnectedMs: number | null
}

type Message = { topic: string; payload: Buffer; isLate: boolean; at: string }
export type Hears = {
  now: () => string
  /** Resolves when the message may be acknowledged: what it says is committed. */
  take: (message: Message) => Promise<void>
  onState: (state: { isConnected: boolean; trouble?: string }) => void
}
export type Subscriber = {
  isConnected: () => boolean
  /** @param how `forever`: the broker is to keep nothing more for this server. */
  close: (how?: 'forever') => Promise<void>
}

const firstWaitMs = 500
const longestWaitMs = 30_000
const keepaliveS = 30
// A number alone is of the moment when it comes. What waited for less is wrong by no more than the usual step between two
// readings; what waited for longer has no time. common practice
const mostAwayMs = 2 * 60_000
// How long after connecting again a message may be one that waited.
const drainMs = 30_000
// As many share a commit; a few times more than the twenty that brokers send unacknowledged. from memory
const mostUnderWay = 100

/**
 * Listens to one broker and goes on trying. Each message is acknowledged once `take` has kept it, in the order in which they came;
 * those that come meanwhile are taken beside it. Where one cannot be kept the connection is given up, so that the broker sends
 * it and what came after it again.
 */
export function openSubscriber(subscription: Subscription, { now, take, onState }: Hears): Subscriber {
  let client: MqttClient | undefined
  let timer: NodeJS.Timeout | undefined
  let waitMs = firstWaitMs
  let isClosed = false
  let aliveMs = subscription.lastConnectedMs
  let lateUntilMs = 0
  let lastMs = 0
  const nowMs = () => Date.parse(now())

  const again = (trouble?: string) => {
    if (isClosed) return
    onState({ isConnected: false, ...(trouble === undefined ? {} : { trouble }) })
    timer = setTimeout(() => void connect(), waitMs)
    waitMs = Math.min(2 * waitMs, longestWaitMs)
  }
  const connect = async () => {
    try {
      const stream = await openStream(subscription)
      if (isClosed) return void stream.destroy()
      client = listen(stream)
    } catch (error) {
      again(troubleOf(error, subscription.url))
    }
  }
  const listen = (stream: Awaited<ReturnType<typeof openStream>>) => {
    const { clientId, username, password, url } = subscription
    const next = new MqttClient(() => stream, {
      ...{ clientId, clean: false, resubscribe: false, keepalive: keepaliveS, protocolVersion: 4, reconnectPeriod: 0 },
      ...(username === null ? {} : { username }),
      ...(password === null ? {} : { password }),
    })
    let trouble: string | undefined
    const turns = inTurn({
      most: mostUnderWay,
      onError: (error) => {
        trouble = `What came could not be kept and is asked for again: ${error instanceof Error ? error.message : 'unknown'}`
        next.end(true)
      },
    })
    // The library acknowledges a message before it reads the next: told of an error it reads on and acknowledges nothing.
    next.handleMessage = (packet, readOn) => {
      const kept = takePacket(packet)
      void turns.add(kept, () => acknowledge(stream, packet)).then(() => readOn(acknowledgedLater))
    }
    next.on('connect', (packet) => begin(next, packet))
    next.on('packetreceive', () => {
      if (next.connected) aliveMs = nowMs()
    })
    next.on('error', (error) => {
      trouble = troubleOf(error, url)
      next.end(true)
    })
    next.once('close', () => {
      if (client === next) client = undefined
      again(trouble ?? 'The broker ended the connection.')
    })
    return next
  }
  const begin = (next: MqttClient, { sessionPresent }: IConnackPacket) => {
    const awayMs = aliveMs === null ? Number.POSITIVE_INFINITY : nowMs() - aliveMs
    lateUntilMs = sessionPresent && awayMs > mostAwayMs ? nowMs() + drainMs : 0
    waitMs = firstWaitMs
    onState({ isConnected: true })
    const { filters, formerFilters } = subscription
    if (formerFilters.length > 0) next.unsubscribe(formerFilters)
    if (filters.length > 0)
      next.subscribe(filters, { qos: 1 }, (error, granted) => {
        const refused = refusedOf(granted ?? [])
        if (error && refused.length === 0) onState({ isConnected: true, trouble: troubleOf(error, subscription.url) })
        if (refused.length > 0)
          onState({ isConnected: true, trouble: `The broker does not let this user read ${refused.join(', ')}.` })
      })
  }
  // What a broker retains was said before; whoever was connected has heard it then.
  const takePacket = async ({ topic, payload, retain }: IPublishPacket) => {
    if (retain) return
    await take({ topic, payload: Buffer.from(payload), isLate: nowMs() < lateUntilMs, at: momentOfItsOwn() })
  }
  // A number alone is of the moment when it comes, and of a gauge and a moment one reading is kept.
  const momentOfItsOwn = () => {
    lastMs = Math.max(nowMs(), lastMs + 1)
    return new Date(lastMs).toISOString()
  }
  void connect()
  return {
    isConnected: () => client?.connected ?? false,
    close: async (how) => {
      isClosed = true
      clearTimeout(timer)
      const last = client
      if (!last) return
      if (how === 'forever' && last.connected && subscription.filters.length > 0)
        await last.unsubscribeAsync(subscription.filters).catch(() => undefined)
      await last.endAsync(how !== 'forever')
    },
  }
}

// MQTT 3.1.1, section 3.9.3: 0x80 is a refusal.
const refusedOf = (granted: ISubscriptionGrant[]): string[] =>
  granted.filter(({ qos }) => Number(qos) >= 128).map(({ topic }) => topic)

const acknowledgedLater = new Error('acknowledged when it is kept')

/** Our own connection, so that it is written whole, between what the library writes. */
function acknowledge(stream: Writable, { qos, messageId = 0 }: IPublishPacket): void {
  // MQTT 3.1.1, section 3.4: PUBACK, two bytes follow, the number of the message.
  if (qos === 1 && stream.writable) stream.write(Buffer.from([0x40, 2, messageId >> 8, messageId & 255]))
}
