import { createHash, createHmac, randomBytes } from 'node:crypto'
import { actorUserId, type Context } from '../context.ts'

// Beyond guessing; only the token's hash is kept.
const tokenBytes = 24

/** Random, or where the write has a repeat key always the same for it, and known to nobody without the server's secret. */
export function invitationToken({ actor, idempotency }: Context, secret: string): string {
  if (!idempotency) return randomBytes(tokenBytes).toString('base64url')
  const { key, requestHash } = idempotency
  const said = JSON.stringify(['invitation', actorUserId(actor), key, requestHash])
  return createHmac('sha256', secret).update(said).digest().subarray(0, tokenBytes).toString('base64url')
}
export const hashToken = (token: string): string => createHash('sha256').update(token).digest('hex')

/** A one-time code that can be read from a terminal and typed on a phone: 12 letters and digits without look-alikes. */
export function newClaimCode(): string {
  const letters = 'ABCDEFGHJKMNPQRSTUVWXYZ23456789'
  const code = [...randomBytes(12)].map((byte) => letters[byte % letters.length]).join('')
  return `${code.slice(0, 4)}-${code.slice(4, 8)}-${code.slice(8)}`
}
export const normaliseClaimCode = (code: string): string => code.toUpperCase().replace(/[^A-Z0-9]/g, '')
