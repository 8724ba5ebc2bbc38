import { speciesProfiles } from '@fryward/husbandry'
import { expect, test } from 'vitest'
import { listSpecies } from './list-species.ts'

test('each species goes by both its names, with what its keeping needs in papers', () => {
  const listed = new Map(listSpecies().map((species) => [species.id, species]))
  expect(listed.size).toBe(speciesProfiles.length)
  expect(listed.get('amphiprion-ocellaris')).toEqual({
    ...{ id: 'amphiprion-ocellaris', scientificName: 'Amphiprion ocellaris', commonName: 'ocellaris clownfish' },
    ...{ care: 'nest', permitNote: null },
  })
  // All seahorses are in CITES Appendix II (CoP 12, 2002, in force since May 2004).
  expect(listed.get('hippocampus-erectus')).toMatchObject({
    care: 'pouch',
    permitNote: expect.stringContaining('CITES'),
  })
  for (const { permitNote } of listed.values()) expect(permitNote ?? 'None.').toMatch(/^\S.*\S$/)
})
