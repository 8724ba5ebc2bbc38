import { describe, expect, it } from 'vitest'
import { copySpecies, findSpecies, getSpecies, SpeciesProfileSchema, speciesProfiles } from './index.ts'
import { assumption } from './source.ts'

const expectedIds = [
  'amphiprion-ocellaris',
  'amphiprion-percula',
  'amphiprion-clarkii',
  'amphiprion-frenatus',
  'amphiprion-melanopus',
  'premnas-biaculeatus',
  'pterapogon-kauderni',
  'pseudochromis-fridmani',
  'elacatinus-figaro',
  'hippocampus-erectus',
]

/** Paths of numbers that stand outside a value with its source. */
function bareNumbers(value: unknown, path: string): string[] {
  if (typeof value === 'number') return [path]
  if (typeof value !== 'object' || value === null || 'source' in value) return []
  return Object.entries(value).flatMap(([key, inner]) => bareNumbers(inner, `${path}.${key}`))
}

describe('species profiles', () => {
  it('are the ten species, each id once', () => {
    expect(speciesProfiles.map(({ id }) => id)).toEqual(expectedIds)
  })

  it.each(speciesProfiles)('$id satisfies the schema and has a source for every number', (profile) => {
    expect(SpeciesProfileSchema.parse(profile)).toEqual(profile)
    expect(bareNumbers(profile, profile.id)).toEqual([])
  })

  it('call the slope of incubation an assumption, and only A. melanopus larvae published', () => {
    for (const { incubation } of speciesProfiles) expect(incubation.q10.source.kind).toBe('assumption')
    const published = speciesProfiles.filter(({ larvalDuration }) => larvalDuration?.q10.source.kind === 'published')
    expect(published.map(({ id }) => id)).toEqual(['amphiprion-melanopus'])
  })

  it('have stages that cover development without a gap, kind by kind', () => {
    for (const { clutchStages } of speciesProfiles) {
      for (const kind of new Set(clutchStages.map((stage) => stage.kind))) {
        const shares = clutchStages.filter((stage) => stage.kind === kind).map(({ share }) => share.value)
        expect(shares[0]!.from).toBe(0)
        expect(shares.at(-1)!.to).toBe(1)
        expect(shares.slice(1).map(({ from }) => from)).toEqual(shares.slice(0, -1).map(({ to }) => to))
      }
    }
  })

  it('wean no earlier than they begin and give no rotifers to brooded young', () => {
    for (const { care, feeding } of speciesProfiles) {
      expect(feeding.weaningFirstDay.value).toBeLessThanOrEqual(feeding.weaningLastDay.value)
      expect(feeding.rotifersPerMl.value === null).toBe(care.value !== 'nest')
    }
  })

  it.each([
    ['pterapogon-kauderni', '81 FR 3023'],
    ['hippocampus-erectus', 'Lin, Lin & Zhang 2008'],
  ])('%s carries its trade caution with its source', (id, citation) => {
    const { permits } = findSpecies(id)!
    expect(permits.some(({ source }) => source.citation.includes(citation))).toBe(true)
  })
})

describe('findSpecies and getSpecies', () => {
  it('find a shipped profile by id', () => {
    expect(findSpecies('premnas-biaculeatus')?.scientificName).toBe('Premnas biaculeatus')
    expect(findSpecies('unknown')).toBeNull()
    expect(() => getSpecies('unknown')).toThrow(
      'species: "unknown" is not a known id; give a profile or one of amphiprion',
    )
  })
})

describe('copySpecies', () => {
  const medianDays = assumption(7.4, "this room's twelve clutches")

  it('changes what is named, keeps the rest and says where it came from', () => {
    const ours = copySpecies('amphiprion-percula', { id: 'our-percula', incubation: { medianDays } })
    const original = getSpecies('amphiprion-percula')
    expect(ours.incubation.medianDays).toEqual(medianDays)
    expect(ours).toEqual({
      ...original,
      id: 'our-percula',
      copiedFrom: 'amphiprion-percula',
      incubation: { ...original.incubation, medianDays },
    })
    expect(original.incubation.medianDays.value).toBe(6.31)
  })

  it('makes up an id when none is given', () => {
    expect(copySpecies('amphiprion-percula', {}).id).toBe('amphiprion-percula-copy')
  })

  it('does not let a new value inherit the old source', () => {
    const changes = JSON.parse('{"incubation": {"medianDays": {"value": 7}}}')
    expect(() => copySpecies('amphiprion-percula', changes)).toThrow('changes.incubation.medianDays.source: undefined')
  })

  it('names the field, the value and the bound that is broken', () => {
    const negative = { incubation: { medianDays: assumption(-1, 'a slip') } }
    expect(() => copySpecies('amphiprion-percula', negative)).toThrow(
      /^.*changes\.incubation\.medianDays\.value: -1 is wrong, .*\b0\b/,
    )
    const backwards = { clutchSize: assumption({ from: 900, to: 100 }, 'a slip') }
    expect(() => copySpecies('amphiprion-percula', backwards)).toThrow('from must not exceed to')
  })

  it('refuses a field that profiles do not have', () => {
    expect(() => copySpecies('amphiprion-percula', JSON.parse('{"colour": "orange"}'))).toThrow('"colour"')
  })
})
