/** The time in milliseconds fills the first 48 bits. */
const timeBits = 48

/**
 * A UUID of version 7 (RFC 9562, section 5.7): random, and one made in a later millisecond sorts later.
 * `crypto.randomUUID` is missing on a plain http LAN address; `getRandomValues` is not.
 * @param nowMs since 1970
 */
export function newId(nowMs = Date.now()): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16))
  for (let i = 0; i < timeBits / 8; i += 1) bytes[i] = Math.floor(nowMs / 2 ** (timeBits - 8 * (i + 1))) % 256
  bytes[6] = ((bytes[6] ?? 0) & 0x0f) | 0x70
  bytes[8] = ((bytes[8] ?? 0) & 0x3f) | 0x80
  const hex = Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('')
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join('-')
}
