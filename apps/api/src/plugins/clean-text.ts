import { RoomError } from '@fryward/room'
import type { FastifyInstance } from 'fastify'
import fp from 'fastify-plugin'

// No request of the contract nests deeper than 6; without a limit, walking a hostile body would exhaust the stack.
const maximumDepth = 30

/**
 * Text that PostgreSQL cannot hold (a zero byte, half a surrogate pair) is refused at the door, wherever it hides; so is
 * a body nested beyond reason, and a query that names a value and leaves it empty (it would be read as 0).
 */
export const cleanText = fp(
  async (app: FastifyInstance) => {
    app.addHook('preValidation', async (request) => {
      // Addresses of pages are the dashboard's own business; nothing of them is kept.
      if (!request.url.startsWith('/api/')) return
      if (isDeeperThan(request.body, maximumDepth))
        throw new RoomError('invalid_input', `The body is nested deeper than ${maximumDepth} levels; no request is.`)
      for (const [name, value] of Object.entries(request.query ?? {})) if (value === '') throw invalidQuery(name)
      for (const [place, value] of Object.entries({
        body: request.body,
        params: request.params,
        query: request.query,
      })) {
        if (hasUnkeepableText(value))
          throw new RoomError(
            'invalid_input',
            `The ${place} holds a character that cannot be kept (a zero byte or half of a character pair). Take it out and send it again.`,
          )
      }
    })
  },
  { name: 'clean-text' },
)

const invalidQuery = (name: string) =>
  new RoomError('invalid_input', `The query names ${name} without a value. Leave it out, or say what it is.`, {
    fields: [{ path: `querystring.${name}`, message: 'a value' }],
  })

function isDeeperThan(value: unknown, levels: number): boolean {
  if (value === null || typeof value !== 'object') return false
  return levels === 0 || Object.values(value).some((inner) => isDeeperThan(inner, levels - 1))
}

function hasUnkeepableText(value: unknown): boolean {
  if (typeof value === 'string') return value.includes('\u0000') || !value.isWellFormed()
  if (Array.isArray(value)) return value.some(hasUnkeepableText)
  if (value !== null && typeof value === 'object')
    return Object.entries(value).some(([key, inner]) => hasUnkeepableText(key) || hasUnkeepableText(inner))
  return false
}
