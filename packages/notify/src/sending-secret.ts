import { hkdfSync } from 'node:crypto'

/**
 * The secret that pushes and webhooks are signed with, made of the server's own (HKDF, RFC 5869). Whoever only sends is
 * given this one: sign-ins and what is kept encrypted cannot be reached with it.
 */
export const sendingSecretOf = (secret: string): string =>
  Buffer.from(hkdfSync('sha256', secret, '', 'sending', 32)).toString('base64url')
