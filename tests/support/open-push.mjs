import { createDecipheriv, hkdfSync } from 'node:crypto'

// Written anew from RFC 8291 (keys) and RFC 8188 (aes128gcm), so that what the server encrypts is not opened by what it uses.

/**
 * The text of a push, as its browser opens it.
 * @param {Buffer} body
 * @param {{ pair: import('node:crypto').ECDH, auth: Buffer }} browser
 * @returns {string}
 */
export function openPush(body, { pair, auth }) {
  const salt = body.subarray(0, 16)
  const keyLength = body.readUInt8(20)
  const sender = body.subarray(21, 21 + keyLength)
  const sealed = body.subarray(21 + keyLength)
  const shared = pair.computeSecret(sender)
  const info = Buffer.concat([Buffer.from('WebPush: info\0'), pair.getPublicKey(), sender])
  const secret = Buffer.from(hkdfSync('sha256', shared, auth, info, 32))
  const key = Buffer.from(hkdfSync('sha256', secret, salt, Buffer.from('Content-Encoding: aes128gcm\0'), 16))
  const nonce = Buffer.from(hkdfSync('sha256', secret, salt, Buffer.from('Content-Encoding: nonce\0'), 12))
  const decipher = createDecipheriv('aes-128-gcm', key, nonce)
  decipher.setAuthTag(sealed.subarray(-16))
  const plain = Buffer.concat([decipher.update(sealed.subarray(0, -16)), decipher.final()])
  return plain.subarray(0, plain.lastIndexOf(2)).toString()
}
