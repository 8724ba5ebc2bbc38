import { createCipheriv, createDecipheriv, hkdfSync, randomBytes } from 'node:crypto'

// NIST SP 800-38D: 96 bits of nonce, new for each, and a tag of 128 bits.
const nonceBytes = 12
const tagBytes = 16

const keyOf = (secret: string, what: string): Buffer => Buffer.from(hkdfSync('sha256', secret, '', what, 32))

/** A text that only this server reads again, and only as what it was sealed as. */
export function seal(secret: string, what: string, text: string): string {
  const nonce = randomBytes(nonceBytes)
  const cipher = createCipheriv('aes-256-gcm', keyOf(secret, what), nonce)
  const sealed = Buffer.concat([cipher.update(text, 'utf8'), cipher.final()])
  return Buffer.concat([nonce, cipher.getAuthTag(), sealed]).toString('base64')
}

/** Null where it was sealed with another secret, or as something else. */
export function unseal(secret: string, what: string, sealed: string): string | null {
  const bytes = Buffer.from(sealed, 'base64')
  const decipher = createDecipheriv('aes-256-gcm', keyOf(secret, what), bytes.subarray(0, nonceBytes))
  decipher.setAuthTag(bytes.subarray(nonceBytes, nonceBytes + tagBytes))
  try {
    return Buffer.concat([decipher.update(bytes.subarray(nonceBytes + tagBytes)), decipher.final()]).toString('utf8')
  } catch {
    // The tag does not fit: that is the answer, not a fault.
    return null
  }
}
