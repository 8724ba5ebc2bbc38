import { describe, expect, it } from 'vitest'
import { brooderRelease, hatchNights } from '../thermal/index.ts'
import { findSpecies, SpeciesProfileSchema } from './index.ts'

const known = findSpecies('other-9-synchiropus-splendidus')!
const unknown = findSpecies('other-x-gramma-loreto')!
const mouth = findSpecies('other-12m-opistognathus-aurifrons')!
const pouch = findSpecies('other-xp-doryrhamphus-excisus')!
const floating = findSpecies('other-xf-synchiropus-ocellatus')!
const eggs = {
  spawnedAt: '2026-03-01T12:00:00.000Z',
  temperatures: [],
  lightsOff: { time: '19:00', timeZone: 'Europe/Lisbon' },
}

describe('a species without a profile', () => {
  it.each([known, unknown, mouth, pouch, floating])(
    'has numbers of its own all the same, each said to be borrowed or chosen',
    (profile) => {
      expect(SpeciesProfileSchema.parse(profile)).toEqual(profile)
      expect(JSON.stringify(profile)).not.toMatch(/"kind":"(published|common-practice|from-memory)"/)
      expect(profile.cautions[0]?.value).toContain('no profile')
    },
  )

  it('hatches when the room says, and over many nights where nobody has said', () => {
    expect(known.tradeName).toBe('Synchiropus splendidus')
    expect(known.incubation.medianDays.value).toBe(9)
    expect(unknown.incubation.spreadBetweenPairs.value).toBeGreaterThan(2 * known.incubation.spreadBetweenPairs.value)
  })

  it('has its numbers from one that cares for its eggs alike, and is forecast like it', () => {
    expect([known, mouth, pouch, floating].map(({ copiedFrom }) => copiedFrom)).toEqual([
      'pseudochromis-fridmani',
      'pterapogon-kauderni',
      'hippocampus-erectus',
      'pseudochromis-fridmani',
    ])
    const setPointC = mouth.incubation.referenceTemperatureC.value
    // Twelve days until the young are out, as the room says, and no more in the mouth after that.
    expect(brooderRelease({ ...eggs, species: mouth, setPointC }).likeliest.date).toBe('2026-03-12')
    expect(() => hatchNights({ ...eggs, species: pouch, setPointC })).toThrow('use brooderRelease')
    // Afloat they hatch within a day or two, where nobody has said.
    expect(hatchNights({ ...eggs, species: floating, setPointC: 27 }).window80).toEqual({
      from: '2026-03-01',
      to: '2026-03-02',
    })
    expect(floating.cautions[0]?.value).toContain('copepod nauplii')
  })
})
