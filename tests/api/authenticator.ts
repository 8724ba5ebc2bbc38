import { createHmac } from 'node:crypto'

const alphabet = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ234567'

/** The secret in an address that an authenticator reads, in base 32 (RFC 4648, section 6) as it stands there. */
export function secretIn(uri: string): string {
  const secret = new URL(uri).searchParams.get('secret')
  if (!secret) throw new Error(`There is no secret in ${uri}`)
  return secret
}

/** What an authenticator shows when it is first looked at. */
export const codeOf = (secret: string): string => codeAt(secret, firstStepOf(secret))

/** What it shows next: a server takes it already, and it has not been typed anywhere. */
export const nextCodeOf = (secret: string): string => codeAt(secret, firstStepOf(secret) + 1)

const stepMs = 30_000
const firstSteps = new Map<string, number>()

/** A test that runs into the next half minute goes on with the same two codes: a server takes the first for that long too. */
function firstStepOf(secret: string): number {
  const step = firstSteps.get(secret) ?? Math.floor(Date.now() / stepMs)
  firstSteps.set(secret, step)
  return step
}

/** RFC 6238 with its default of 30 s, over RFC 4226, section 5.3. */
function codeAt(secret: string, step: number): string {
  const counter = Buffer.alloc(8)
  counter.writeBigUInt64BE(BigInt(step))
  const mac = createHmac('sha1', fromBase32(secret)).update(counter).digest()
  const offset = mac[19]! & 0x0f
  return String((mac.readUInt32BE(offset) & 0x7fffffff) % 1_000_000).padStart(6, '0')
}

function fromBase32(text: string): Buffer {
  const bits = [...text.replace(/=+$/, '')]
    .map((letter) => alphabet.indexOf(letter).toString(2).padStart(5, '0'))
    .join('')
  return Buffer.from((bits.match(/.{8}/g) ?? []).map((byte) => Number.parseInt(byte, 2)))
}
