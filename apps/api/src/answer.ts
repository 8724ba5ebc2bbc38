import { createHash } from 'node:crypto'
import { promisify } from 'node:util'
import { brotliCompress, constants, gzip } from 'node:zlib'
import type { FastifyReply, FastifyRequest } from 'fastify'

type Prepared = { json: Buffer; tag: string; packed: Map<Packing, Promise<Buffer>> }
type Packing = keyof typeof packings

// Below this a packet holds it anyway. from memory: an Ethernet packet carries about 1,400 bytes of body
const worthPackingBytes = 1400
// Brotli's middle quality takes about as long as gzip's default and a day's list comes out a quarter smaller (measured on the
// demo room); browsers ask for it over HTTPS.
const packings = {
  br: (json: Buffer) => promisify(brotliCompress)(json, { params: { [constants.BROTLI_PARAM_QUALITY]: 5 } }),
  gzip: (json: Buffer) => promisify(gzip)(json),
}

// A use case that gives the same object again (a day's list at one revision) is written out and packed once for all.
const prepared = new WeakMap<object, Prepared>()

type Sending = { request: FastifyRequest; reply: FastifyReply; isSecret: boolean }

/** Sends an answer as JSON: packed where the client takes it, and as "not changed" where it has it already. */
export async function sendAnswer({ request, reply, isSecret }: Sending, answer: unknown): Promise<FastifyReply> {
  reply.type('application/json; charset=utf-8')
  // What is about somebody's own way in stays on no disk.
  if (request.method !== 'GET' || answer === null || typeof answer !== 'object' || isSecret)
    return reply.header('cache-control', 'no-store').send(answer)
  const { json, tag, packed } = prepare(answer)
  // Every answer is somebody's own and may change at once; the tag saves sending what a phone has.
  reply.header('cache-control', 'private, no-cache').header('etag', tag).header('vary', 'accept-encoding')
  if (request.headers['if-none-match'] === tag) return reply.code(304).send()
  const packing = json.length < worthPackingBytes ? null : packingFor(String(request.headers['accept-encoding'] ?? ''))
  if (!packing) return reply.send(json)
  const body = packed.get(packing) ?? packings[packing](json)
  packed.set(packing, body)
  return reply.header('content-encoding', packing).send(await body)
}

/** Sends a text packed where the client takes it. */
export async function sendPacked(
  request: Pick<FastifyRequest, 'headers'>,
  reply: FastifyReply,
  text: Buffer,
): Promise<FastifyReply> {
  reply.header('vary', 'accept-encoding')
  const packing = packingFor(String(request.headers['accept-encoding'] ?? ''))
  if (!packing) return reply.send(text)
  return reply.header('content-encoding', packing).send(await packings[packing](text))
}

const packingFor = (accepted: string): Packing | null =>
  /\bbr\b/.test(accepted) ? 'br' : /\bgzip\b/.test(accepted) ? 'gzip' : null

function prepare(answer: object): Prepared {
  const known = prepared.get(answer)
  if (known) return known
  const json = Buffer.from(JSON.stringify(answer))
  const tag = `W/"${createHash('sha256').update(json).digest('base64url').slice(0, 22)}"`
  const made: Prepared = { json, tag, packed: new Map() }
  prepared.set(answer, made)
  return made
}
