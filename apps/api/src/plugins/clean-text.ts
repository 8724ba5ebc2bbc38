import { RoomError } from '@fryward/room'
import type { FastifyInstance } from 'fastify'
import fp from 'fastify-plugin'

/** Text that PostgreSQL cannot hold (a zero byte, half a surrogate pair) is refused at the door, wherever it hides. */
export const cleanText = fp(
  async (app: FastifyInstance) => {
    app.addHook('preValidation', async (request) => {
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

function hasUnkeepableText(value: unknown): boolean {
  if (typeof value === 'string') return value.includes('\u0000') || !value.isWellFormed()
  if (Array.isArray(value)) return value.some(hasUnkeepableText)
  if (value !== null && typeof value === 'object')
    return Object.entries(value).some(([key, inner]) => hasUnkeepableText(key) || hasUnkeepableText(inner))
  return false
}
