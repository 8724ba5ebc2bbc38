'use client'

import { useQuery } from '@tanstack/react-query'
import { SelectBox } from '@/base/forms/SelectBox.tsx'
import { OtherFields } from './OtherFields.tsx'
import { OtherSpeciesNotice } from './OtherSpeciesNotice.tsx'
import { speciesOptions } from './queries.ts'
import { typedOther, typedText } from './typed-species.ts'

type Props = { value: string; onChoose: (species: string) => void }

/** One of the species that there is a profile of, or another by its name; `readSpecies` reads what was chosen. */
export function SpeciesSelect({ value, onChoose }: Props) {
  const species = useQuery(speciesOptions()).data ?? []
  const other = typedOther(value)
  return (
    <>
      <SelectBox
        label="Species"
        isRequired
        value={other ? 'other' : value}
        onChoose={(id) => onChoose(id === 'other' ? typedText({ name: '', days: '', care: 'nest' }) : id)}
        choices={[
          { value: '', label: 'choose' },
          ...species.map((one) => ({ value: one.id, label: `${one.commonName} (${one.scientificName})` })),
          { value: 'other', label: 'another species' },
        ]}
      />
      {other && (
        <>
          <OtherFields other={other} onOther={(typed) => onChoose(typedText(typed))} />
          <OtherSpeciesNotice />
        </>
      )}
    </>
  )
}
