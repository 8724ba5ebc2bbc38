import { expect, test } from 'vitest'
import { sayReset } from './say-reset.ts'

test('the mail for a new password says from where it was asked, how long the link is good, and what to do if it was not you', () => {
  const link = 'https://fish.example.org/new-password/abc'
  const { text } = sayReset({ name: 'Ana', link, publicUrl: 'https://fish.example.org', address: '203.0.113.9' })
  for (const part of [link, '203.0.113.9', 'within an hour', 'good once', 'If it was not you'])
    expect(text).toContain(part)
})
