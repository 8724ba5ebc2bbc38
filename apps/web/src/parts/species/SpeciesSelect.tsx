'use client'

import { useQuery } from '@tanstack/react-query'
import { SelectBox } from '@/base/forms/SelectBox.tsx'
import { speciesOptions } from './queries.ts'

/** One of the species that there is a profile of. */
export function SpeciesSelect({ value, onChoose }: { value: string; onChoose: (species: string) => void }) {
  const species = useQuery(speciesOptions()).data ?? []
  return (
    <SelectBox
      label="Species"
      isRequired
      value={value}
      onChoose={onChoose}
      choices={[
        { value: '', label: 'choose' },
        ...species.map((one) => ({ value: one.id, label: `${one.commonName} (${one.scientificName})` })),
      ]}
    />
  )
}
