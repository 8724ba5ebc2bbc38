import { describe, expect, it } from 'vitest'
import { otherSpeciesId, readOtherSpecies } from './other-species.ts'
import { SpeciesIdSchema } from './pair.ts'

describe('a species without a profile', () => {
  it.each([
    [{ name: 'Gramma loreto', eggDays: 9, care: 'nest' }, 'other-9-gramma-loreto'],
    [{ name: '  Gramma  loreto ', eggDays: null, care: 'nest' }, 'other-x-gramma-loreto'],
    [{ name: 'Elacatinus sp. 2', eggDays: 60, care: 'nest' }, 'other-60-elacatinus-sp-2'],
    [{ name: 'Synchiropus splendidus', eggDays: 1, care: 'pelagic' }, 'other-1f-synchiropus-splendidus'],
    [{ name: 'Opistognathus aurifrons', eggDays: null, care: 'mouth' }, 'other-xm-opistognathus-aurifrons'],
    [{ name: 'Doryrhamphus excisus', eggDays: 12, care: 'pouch' }, 'other-12p-doryrhamphus-excisus'],
  ] as const)('says in its id what is known of it: %o', (said, id) => {
    expect(otherSpeciesId(said)).toBe(id)
    expect(SpeciesIdSchema.parse(id)).toBe(id)
    expect(readOtherSpecies(id)).toMatchObject({ eggDays: said.eggDays, care: said.care })
  })

  it.each([
    { name: '', eggDays: 9 },
    { name: '??', eggDays: null },
    { name: 'Γραμμα', eggDays: null },
    { name: 'x'.repeat(60), eggDays: null },
    { name: 'Gramma loreto', eggDays: 0 },
    { name: 'Gramma loreto', eggDays: 3.5 },
    { name: 'Gramma loreto', eggDays: 61 },
  ])('has no id for %o', (said) => {
    expect(otherSpeciesId({ ...said, care: 'nest' })).toBeNull()
  })

  it.each(['amphiprion-ocellaris', 'other', 'other-9', 'other-9-', 'other-99-gramma-loreto', 'other-0-gramma-loreto'])(
    'is not what %s is',
    (id) => {
      expect(readOtherSpecies(id)).toBeNull()
    },
  )

  it('is called by its name again', () => {
    expect(readOtherSpecies('other-x-gramma-loreto')?.name).toBe('Gramma loreto')
  })
})
