import { describe, expect, it } from 'vitest'
import { toSafePath } from './safe-path.ts'

const here = 'https://fry.example/sign-in'

describe('where a sign-in leads', () => {
  it.each(['/rooms/1/today', '/rooms/1/today?task=2', '/join/abc#top'])('is %s as asked', (next) => {
    expect(toSafePath(next)).toBe(next)
  })

  // What leaves the site is decided by the browser's own reading of the address (URL Standard, WHATWG).
  it.each(['https://evil.example', '//evil.example', '/\\evil.example', '\\\\evil.example', 'javascript:alert(1)', ''])(
    'is the list of rooms for %s, and never another site',
    (next) => {
      expect(toSafePath(next)).toBe('/rooms')
      expect(new URL(toSafePath(next), here).origin).toBe('https://fry.example')
    },
  )

  it('is the list of rooms where nothing was asked', () => {
    expect(toSafePath(null)).toBe('/rooms')
  })
})
