import { createHash, timingSafeEqual } from 'node:crypto'
import { countMessagesOfADay, countStandingAlarms } from '@fryward/room'
import type { Database } from '@fryward/store'
import type { FastifyInstance } from 'fastify'
import fp from 'fastify-plugin'
import { collectDefaultMetrics, Gauge, Histogram, Registry } from 'prom-client'

const digest = (text: string): Buffer => createHash('sha256').update(text).digest()

/** `/metrics` in Prometheus text, for whoever brings the token of the settings; without one there is no such page. */
export const metrics = fp(
  async (app: FastifyInstance, { database, token }: { database: Database; token: string | undefined }) => {
    if (token === undefined) return
    const register = new Registry()
    collectDefaultMetrics({ register })
    const took = new Histogram({
      ...{
        name: 'fryward_request_seconds',
        help: 'Time from a request to the end of its answer',
        registers: [register],
      },
      labelNames: ['method', 'route', 'status'] as const,
      // From what Today takes to what a person calls slow. common practice
      buckets: [0.005, 0.02, 0.05, 0.1, 0.3, 1, 3, 10],
    })
    app.addHook('onResponse', ({ method, routeOptions }, reply, done) => {
      // The route as it is registered: ids of an address would make a row each.
      const route = routeOptions.url ?? 'none'
      took.observe({ method, route, status: String(reply.statusCode) }, reply.elapsedTime / 1000)
      done()
    })
    gaugesOf(register, database)
    app.get('/metrics', { schema: { hide: true } }, async ({ headers }, reply) => {
      const brought = /^Bearer (.+)$/.exec(headers.authorization ?? '')?.[1] ?? ''
      if (!timingSafeEqual(digest(brought), digest(token))) return reply.code(404).callNotFound()
      return reply
        .type(register.contentType)
        .serializer((text: string) => text)
        .send(await register.metrics())
    })
  },
  { name: 'metrics' },
)

/** What is asked of the database when somebody looks. */
function gaugesOf(register: Registry, database: Database): void {
  new Gauge({
    ...{
      name: 'fryward_alarms_standing',
      help: 'Alarms that stand',
      labelNames: ['kind'] as const,
      registers: [register],
    },
    async collect() {
      this.reset()
      for (const { kind, number } of await countStandingAlarms({ database })) this.set({ kind }, number)
    },
  })
  new Gauge({
    ...{ name: 'fryward_messages_of_a_day', help: 'Messages of the last 24 hours by what became of them' },
    ...{ labelNames: ['way', 'state'] as const, registers: [register] },
    async collect() {
      this.reset()
      for (const { way, state, number } of await countMessagesOfADay({ database })) this.set({ way, state }, number)
    },
  })
}
