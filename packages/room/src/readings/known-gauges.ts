import type { KnownGauges } from '@fryward/readings'
import type { Id } from '@fryward/shared'
import type { Database } from '@fryward/store'
import { LRUCache } from 'lru-cache'

// As long as a token is remembered at the door: what another process changed is over when it has passed.
const remembersMs = 1000
const mostDevices = 5000
const known = new WeakMap<Database, LRUCache<Id, Promise<KnownGauges>>>()

function cacheOf(database: Database): LRUCache<Id, Promise<KnownGauges>> {
  const cache = known.get(database) ?? new LRUCache({ max: mostDevices, ttl: remembersMs })
  known.set(database, cache)
  return cache
}

/** The gauges of a device that are in use, by what it calls them. */
export function knownGauges(
  database: Database,
  { roomId, deviceId }: { roomId: Id; deviceId: Id },
): Promise<KnownGauges> {
  const cache = cacheOf(database)
  const found = cache.get(deviceId)
  if (found) return found
  const asked = readGauges(database, { roomId, deviceId })
  cache.set(deviceId, asked)
  asked.catch(() => cache.delete(deviceId))
  return asked
}

/** Whoever changes a gauge says so: the next post of this process reads them anew. */
export const forgetGauges = (database: Database): void => known.get(database)?.clear()

async function readGauges(database: Database, of: { roomId: Id; deviceId: Id }): Promise<KnownGauges> {
  const gauges = await database.prisma.gauge.findMany({
    where: { ...of, endedAt: null },
    select: { key: true, channel: true, quantity: true, offset: true },
  })
  return new Map(gauges.map((gauge) => [gauge.key, gauge]))
}
