import { createHash } from 'node:crypto'
import { promisify } from 'node:util'
import { gzip } from 'node:zlib'
import type { FastifyReply, FastifyRequest } from 'fastify'

type Prepared = { json: Buffer; tag: string; zipped: Promise<Buffer> | null }

// Below this a packet holds it anyway. from memory: an Ethernet packet carries about 1,400 bytes of body
const worthZippingBytes = 1400
const zip = promisify(gzip)

// A use case that gives the same object again (a day's list at one revision) is written out and zipped once for all.
const prepared = new WeakMap<object, Prepared>()

/** Sends an answer as JSON: zipped where the client takes it, and as "not changed" where it has it already. */
export async function sendAnswer(request: FastifyRequest, reply: FastifyReply, answer: unknown): Promise<FastifyReply> {
  reply.type('application/json; charset=utf-8')
  if (request.method !== 'GET' || answer === null || typeof answer !== 'object') return reply.send(answer)
  const { json, tag, zipped } = prepare(answer)
  // Every answer is somebody's own and may change at once; the tag saves sending what a phone has.
  reply.header('cache-control', 'private, no-cache').header('etag', tag).header('vary', 'accept-encoding')
  if (request.headers['if-none-match'] === tag) return reply.code(304).send()
  if (!zipped || !/\bgzip\b/.test(String(request.headers['accept-encoding'] ?? ''))) return reply.send(json)
  return reply.header('content-encoding', 'gzip').send(await zipped)
}

function prepare(answer: object): Prepared {
  const known = prepared.get(answer)
  if (known) return known
  const json = Buffer.from(JSON.stringify(answer))
  const tag = `W/"${createHash('sha256').update(json).digest('base64url').slice(0, 22)}"`
  const made = {
    json,
    tag,
    zipped: json.length < worthZippingBytes ? null : zip(json),
  }
  prepared.set(answer, made)
  return made
}
