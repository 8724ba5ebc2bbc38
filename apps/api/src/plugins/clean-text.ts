import { RoomError } from '@fryward/room'
import type { FastifyInstance } from 'fastify'
import fp from 'fastify-plugin'
import { flawIn } from '../flaw.ts'

/**
 * What no request of the contract holds is refused before its schema is asked: text that cannot be kept, more values or
 * deeper ones than any form sends, and a query that names a value and leaves it empty (it would be read as 0).
 */
export const cleanText = fp(
  async (app: FastifyInstance) => {
    app.addHook('preValidation', (request, _reply, done) => {
      // Addresses of pages are the dashboard's own business; nothing of them is kept.
      if (!request.url.startsWith('/api/')) return done()
      for (const [name, value] of Object.entries(request.query ?? {})) if (value === '') throw invalidQuery(name)
      const { params, query, body } = request
      for (const [place, value] of Object.entries({ params, query, body })) {
        // A picture is no text, whatever its bytes are.
        const flaw = Buffer.isBuffer(value) ? null : flawIn(value)
        if (flaw) throw new RoomError('invalid_input', `The ${place} ${flaw}`)
      }
      done()
    })
  },
  { name: 'clean-text' },
)

const invalidQuery = (name: string) =>
  new RoomError('invalid_input', `The query names ${name} without a value. Leave it out, or say what it is.`, {
    fields: [{ path: `querystring.${name}`, message: 'a value' }],
  })
