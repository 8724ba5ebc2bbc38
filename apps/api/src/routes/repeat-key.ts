import { createHash } from 'node:crypto'
import { type Context, RoomError } from '@fryward/room'
import type { FastifyRequest } from 'fastify'

/** The context of a write, with its repeat key where it has one: a second time under that key gets the first answer. */
export function withRepeatKey(ctx: Context, request: FastifyRequest): Context {
  const key = request.headers['idempotency-key']
  if (key === undefined) return ctx
  if (typeof key !== 'string' || !/^[\x21-\x7e]{8,128}$/.test(key))
    throw new RoomError('invalid_input', 'An Idempotency-Key has 8 to 128 characters without spaces; a UUID does.')
  return { ...ctx, idempotency: { key, requestHash: hashOf(request) } }
}

function hashOf({ method, url, body }: FastifyRequest): string {
  const hash = createHash('sha256')
  if (Buffer.isBuffer(body))
    return hash
      .update(JSON.stringify([method, url]))
      .update(body)
      .digest('hex')
  return hash.update(JSON.stringify([method, url, body ?? null])).digest('hex')
}
