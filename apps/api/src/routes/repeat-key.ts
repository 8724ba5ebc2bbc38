import { subtle } from 'node:crypto'
import { type Context, RoomError } from '@fryward/room'
import type { FastifyRequest } from 'fastify'

/** The context of a write, with its repeat key where it has one: a second time under that key gets the first answer. */
export async function withRepeatKey(ctx: Context, request: FastifyRequest): Promise<Context> {
  const key = request.headers['idempotency-key']
  if (key === undefined) return ctx
  if (typeof key !== 'string' || !/^[\x21-\x7e]{8,128}$/.test(key))
    throw new RoomError('invalid_input', 'An Idempotency-Key has 8 to 128 characters without spaces; a UUID does.')
  return { ...ctx, idempotency: { key, requestHash: await hashOf(request) } }
}

/** Worked out beside the event loop: a photo is large. */
async function hashOf({ method, url, body }: FastifyRequest): Promise<string> {
  const said = Buffer.isBuffer(body) ? await sha256(body) : (body ?? null)
  return sha256(Buffer.from(JSON.stringify([method, url, said])))
}

const sha256 = async (data: Buffer): Promise<string> =>
  Buffer.from(await subtle.digest('SHA-256', data)).toString('hex')
