import { describe, expect, it } from 'vitest'
import { sayInbreeding } from './say-inbreeding.ts'
import { sayReached, sayShareOf } from './say-stage.ts'

const voice = { locale: 'en-GB' } as const

describe('how many reached a stage', () => {
  it.each([
    [{ status: 'reached', atLeast: 60, atMost: 60 }, '60'],
    [{ status: 'reached', atLeast: 50, atMost: 60 }, '50 to 60'],
    [{ status: 'reached', atLeast: 50, atMost: null }, 'at least 50'],
    [{ status: 'so_far', atLeast: 42, atMost: 42 }, '42 so far'],
    [{ status: 'reached', atLeast: 0, atMost: 0 }, '0'],
    [{ status: 'unknown', atLeast: null, atMost: null }, 'not known'],
    [{ status: 'reached', atLeast: null, atMost: null }, 'not known'],
    [{ status: 'not_yet', atLeast: null, atMost: null }, 'not yet'],
    [{ status: 'not_followed', atLeast: null, atMost: null }, 'not followed'],
  ] as const)('%o is %s', (stage, said) => {
    expect(sayReached(stage, voice)).toBe(said)
  })

  it('never stands as a share without its interval', () => {
    const share = { share: 0.754, lower: 0.66, upper: 0.821, of: 80 }
    expect(sayShareOf({ share, fromStage: 'hatched' }, 'nest', voice)).toBe('75% (66 to 82%) of hatched')
    expect(sayShareOf({ share, fromStage: 'hatched' }, 'mouth', voice)).toBe('75% (66 to 82%) of released')
    expect(sayShareOf({ share: null, fromStage: null }, 'nest', voice)).toBeNull()
  })
})

describe('how inbred young are', () => {
  it.each([
    [0, 'not inbred, as far as is known'],
    [0.25, '25% inbred, as of brother and sister, or parent and child'],
    [0.375, '37.5% inbred, more than of brother and sister, or parent and child'],
    [0.125, '12.5% inbred, as of half brother and half sister'],
    [0.0625, '6.25% inbred, as of first cousins'],
    [0.015625, '1.56% inbred, less than of first cousins'],
  ])('%d is %s', (inbreeding, said) => {
    expect(sayInbreeding(inbreeding, voice)).toBe(said)
  })
})
