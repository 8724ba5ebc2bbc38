import { describe, expect, it } from 'vitest'
import { shortTitle } from './short-title.ts'

const short = (text: string, name = 'R2') => shortTitle({ text, quantities: {} }, name).text

describe('a title under the name of its vessel', () => {
  it('says what to do without naming the vessel again', () => {
    expect(short('{amount} concentrate into R2, second feed')).toBe('{amount} concentrate, second feed')
    expect(short('Brush the walls of R2')).toBe('Brush the walls')
    expect(short('Count R2, with eggs')).toBe('Count, with eggs')
    expect(short('Feed Copper pair fresh food', 'Copper pair')).toBe('Feed fresh food')
    expect(short('Look for eggs: Copper pair', 'Copper pair')).toBe('Look for eggs')
    expect(short('Pull the nest of C1: tonight likely', 'C1')).toBe('Pull the nest: tonight likely')
    expect(short('{amount} out of R2: L4, other fish')).toBe('{amount} out: L4, other fish')
    expect(short('{amount} of R1, sieved, into R2: {animals}, first feed')).toBe(
      '{amount} of R1, sieved: {animals}, first feed',
    )
    expect(short('{amount}, Artemia, into Larvae, 18 Nov, day 6', 'Larvae, 18 Nov')).toBe('{amount}, Artemia, day 6')
    expect(short('Test ammonia in L1, Larvae, 18 Nov', 'Larvae, 18 Nov')).toBe('Test ammonia in L1')
    expect(short('What has hatched of C1?', 'C1')).toBe('What has hatched?')
    expect(short('{amount} of R2 out, as much new water in')).toBe('{amount} out, as much new water in')
  })

  it('leaves a whole sentence where the verb needs something to stand on', () => {
    expect(short('Look at L4, day 3', 'L4')).toBe('Look, day 3')
    expect(short('See to R2: foam')).toBe('See to it: foam')
    expect(short('Check that R2 stands apart')).toBe('Check that it stands apart')
  })

  it('takes no name for a longer one that begins like it', () => {
    expect(short('Brush the walls of R22')).toBe('Brush the walls of R22')
    expect(short('Count R2 (spare)', 'R2 (spare)')).toBe('Count')
  })

  it('stays whole when the vessel is not in it', () => {
    expect(short('Disinfect the tools')).toBe('Disinfect the tools')
    expect(short('R2')).toBe('R2')
  })
})
