import { speciesProfiles } from '@fryward/husbandry'
import type { SpeciesSummary } from '@fryward/shared'

export function listSpecies(): SpeciesSummary[] {
  return speciesProfiles.map((profile) => ({
    id: profile.id,
    scientificName: profile.scientificName,
    commonName: profile.tradeName,
    care: profile.care.value,
    permitNote: profile.permits.map((permit) => permit.value).join(' ') || null,
  }))
}
