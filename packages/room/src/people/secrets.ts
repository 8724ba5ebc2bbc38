import { createHash, randomBytes } from 'node:crypto'

/** 24 random bytes are beyond guessing; only their hash is kept. */
export const newToken = (): string => randomBytes(24).toString('base64url')
export const hashToken = (token: string): string => createHash('sha256').update(token).digest('hex')

/** A one-time code that can be read from a terminal and typed on a phone: 12 letters and digits without look-alikes. */
export function newClaimCode(): string {
  const letters = 'ABCDEFGHJKMNPQRSTUVWXYZ23456789'
  const code = [...randomBytes(12)].map((byte) => letters[byte % letters.length]).join('')
  return `${code.slice(0, 4)}-${code.slice(4, 8)}-${code.slice(8)}`
}
export const normaliseClaimCode = (code: string): string => code.toUpperCase().replace(/[^A-Z0-9]/g, '')
