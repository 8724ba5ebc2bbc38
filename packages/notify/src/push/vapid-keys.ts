import { createECDH, hkdfSync } from 'node:crypto'

export type VapidKeys = { publicKey: string; privateKey: string }

/**
 * The key pair that push services know this server by (RFC 8292), made of the secret that sending has: every process has the
 * same, and nothing more has to be kept. With another secret, phones have to be let in anew.
 */
export function vapidKeysOf(secret: string): VapidKeys {
  for (let attempt = 0; ; attempt += 1) {
    const scalar = Buffer.from(hkdfSync('sha256', secret, '', `web push ${attempt}`, 32))
    const pair = createECDH('prime256v1')
    try {
      pair.setPrivateKey(scalar)
    } catch (error) {
      // One scalar in four thousand million is none of this curve.
      if (attempt < 8) continue
      throw error
    }
    return { publicKey: pair.getPublicKey().toString('base64url'), privateKey: scalar.toString('base64url') }
  }
}
