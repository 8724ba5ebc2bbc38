import { createHash, createHmac, randomBytes, randomInt } from 'node:crypto'
import { actorUserId, type Context } from '../context.ts'

// Beyond guessing; only the token's hash is kept.
const tokenBytes = 24

/** For the link of an invitation. */
export const invitationToken = (ctx: Context, secret: string): string => tokenOf('invitation', ctx, secret)
/** For a device to bring with each post. */
export const deviceToken = (ctx: Context, secret: string): string => tokenOf('device', ctx, secret)

/** Random, or where the write has a repeat key always the same for it, and known to nobody without the server's secret. */
function tokenOf(what: string, { actor, idempotency }: Context, secret: string): string {
  if (!idempotency) return newToken()
  const { key, requestHash } = idempotency
  const said = JSON.stringify([what, actorUserId(actor), key, requestHash])
  return createHmac('sha256', secret).update(said).digest().subarray(0, tokenBytes).toString('base64url')
}
/** Random: for a link that is made once. */
export const newToken = (): string => randomBytes(tokenBytes).toString('base64url')
export const hashToken = (token: string): string => createHash('sha256').update(token).digest('hex')

// Without look-alikes.
const letters = 'ABCDEFGHJKMNPQRSTUVWXYZ23456789'

/** Groups of four letters and digits that can be read from a terminal and typed on a phone. */
const typeable = (groups: number): string =>
  Array.from({ length: groups }, () =>
    Array.from({ length: 4 }, () => letters[randomInt(letters.length)]).join(''),
  ).join('-')

/** A one-time code: 59 bits. */
export const newClaimCode = (): string => typeable(3)
/** A password for somebody to begin with: 79 bits. */
export const newPassword = (): string => typeable(4)
export const normaliseClaimCode = (code: string): string => code.toUpperCase().replace(/[^A-Z0-9]/g, '')
