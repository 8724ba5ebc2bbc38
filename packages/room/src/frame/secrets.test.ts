import { describe, expect, test } from 'vitest'
import type { Actor, Context } from '../context.ts'
import { seal, unseal } from './sealed.ts'
import { deviceToken, hashToken, invitationToken, newClaimCode, newPassword, normaliseClaimCode } from './secrets.ts'

describe('a sealed text', () => {
  const sealed = seal('secret', 'a password', 'hunter2 ✓')
  test('is read again by whoever has the secret, as what it was sealed as, and by nobody else', () => {
    expect(unseal('secret', 'a password', sealed)).toBe('hunter2 ✓')
    expect(unseal('another secret', 'a password', sealed)).toBeNull()
    expect(unseal('secret', 'an address', sealed)).toBeNull()
    expect(unseal('secret', 'a password', seal('secret', 'a password', ''))).toBe('')
  })
  test('is another each time, and none once a bit of it is another', () => {
    expect(seal('secret', 'a password', 'hunter2 ✓')).not.toBe(sealed)
    const bytes = Buffer.from(sealed, 'base64')
    for (const [index, byte] of bytes.entries()) {
      const changed = Buffer.from(bytes)
      changed[index] = byte ^ 1
      expect(unseal('secret', 'a password', changed.toString('base64'))).toBeNull()
    }
  })
  test('has a nonce of 96 bits and a tag of 128 (NIST SP 800-38D, 5.2.1)', () => {
    expect(Buffer.from(seal('secret', 'a password', 'four'), 'base64')).toHaveLength(12 + 16 + 4)
  })
})

describe('a token', () => {
  const person = { kind: 'person', userId: 'ana', name: 'Ana' } as const
  const contextOf = (key: string | null, { actor = person as Actor, requestHash = 'hash' } = {}): Context => ({
    ...{ database: {} as Context['database'], actor, now: '2026-03-10T12:00:00.000Z' },
    ...(key === null ? {} : { idempotency: { key, requestHash } }),
  })
  test('is the same for a repeat of its request, and another for anybody and anything else', () => {
    const token = deviceToken(contextOf('key'), 'secret')
    expect(deviceToken(contextOf('key'), 'secret')).toBe(token)
    const others = [
      deviceToken(contextOf('another key'), 'secret'),
      deviceToken(contextOf('key'), 'another secret'),
      deviceToken(contextOf('key', { actor: { ...person, userId: 'ben' } }), 'secret'),
      deviceToken(contextOf('key', { requestHash: 'another' }), 'secret'),
      invitationToken(contextOf('key'), 'secret'),
      deviceToken(contextOf(null), 'secret'),
      deviceToken(contextOf(null), 'secret'),
    ]
    expect(new Set([token, ...others]).size).toBe(8)
    // 24 bytes in base64url (RFC 4648, 5).
    for (const each of [token, ...others]) expect(each).toMatch(/^[A-Za-z0-9_-]{32}$/)
  })
  test('is kept as its SHA-256 (FIPS 180-2, B.1)', () => {
    expect(hashToken('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad')
  })
})

describe('a code that is typed', () => {
  test('is groups of four without look-alikes, never the same twice', () => {
    const codes = Array.from({ length: 200 }, newClaimCode)
    for (const code of codes) expect(code).toMatch(/^([A-HJKMNP-Z2-9]{4}-){2}[A-HJKMNP-Z2-9]{4}$/)
    expect(newPassword()).toMatch(/^([A-HJKMNP-Z2-9]{4}-){3}[A-HJKMNP-Z2-9]{4}$/)
    expect(new Set(codes).size).toBe(200)
    // Of 2,400 draws each of the 31 signs comes: one of them does not with a chance of 31 (30/31)^2400, 2e-33.
    expect(new Set(codes.join('').replaceAll('-', '')).size).toBe(31)
  })
  test('holds however it is typed', () => {
    expect(normaliseClaimCode(' abcd-efgh 2345\n')).toBe('ABCDEFGH2345')
    expect(normaliseClaimCode('ABCD-EFGH-2345')).toBe(normaliseClaimCode('abcdefgh2345'))
  })
})
