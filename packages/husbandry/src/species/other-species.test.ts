import { describe, expect, it } from 'vitest'
import { findSpecies, SpeciesProfileSchema } from './index.ts'

const known = findSpecies('other-9-synchiropus-splendidus')!
const unknown = findSpecies('other-x-gramma-loreto')!

describe('a species without a profile', () => {
  it.each([known, unknown])('has numbers of its own all the same, each said to be borrowed or chosen', (profile) => {
    expect(SpeciesProfileSchema.parse(profile)).toEqual(profile)
    expect(JSON.stringify(profile)).not.toMatch(/"kind":"(published|common-practice|from-memory)"/)
    expect(profile.cautions[0]?.value).toContain('no profile')
  })

  it('hatches when the room says, and over many nights where nobody has said', () => {
    expect(known.tradeName).toBe('Synchiropus splendidus')
    expect(known.incubation.medianDays.value).toBe(9)
    expect(unknown.incubation.spreadBetweenPairs.value).toBeGreaterThan(2 * known.incubation.spreadBetweenPairs.value)
  })
})
