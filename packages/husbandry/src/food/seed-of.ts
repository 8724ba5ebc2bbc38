/**
 * A seed from a name, so that each thing draws its own luck whatever else is in the room: the same future with or without
 * one more culture. FNV-1a, 32 bits (Fowler, Noll & Vo, from memory).
 */
export function seedOf(name: string): number {
  let hash = 0x811c9dc5
  for (let index = 0; index < name.length; index += 1) {
    hash ^= name.charCodeAt(index)
    hash = Math.imul(hash, 0x01000193)
  }
  return hash >>> 0
}
