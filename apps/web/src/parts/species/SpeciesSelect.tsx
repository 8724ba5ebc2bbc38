'use client'

import { TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { NumberBox } from '@/base/forms/NumberBox.tsx'
import { Row } from '@/base/forms/Row.tsx'
import { SelectBox } from '@/base/forms/SelectBox.tsx'
import { OtherSpeciesNotice } from './OtherSpeciesNotice.tsx'
import { speciesOptions } from './queries.ts'
import { type TypedOther, typedOther, typedText } from './typed-species.ts'

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
        onChoose={(id) => onChoose(id === 'other' ? typedText({ name: '', days: '' }) : id)}
        choices={[
          { value: '', label: 'choose' },
          ...species.map((one) => ({ value: one.id, label: `${one.commonName} (${one.scientificName})` })),
          { value: 'other', label: 'another species' },
        ]}
      />
      {other && <OtherFields other={other} onOther={(typed) => onChoose(typedText(typed))} />}
    </>
  )
}

function OtherFields({ other, onOther }: { other: TypedOther; onOther: (other: TypedOther) => void }) {
  return (
    <>
      <Row>
        <TextInput
          label="Scientific name"
          description="Such as Synchiropus splendidus"
          required
          value={other.name}
          onChange={(event) => onOther({ ...other, name: event.currentTarget.value })}
        />
        <NumberBox
          label="From eggs to hatch"
          help="Not known? Leave it empty"
          unitWord="days"
          isWhole
          text={other.days}
          onText={(days) => onOther({ ...other, days })}
        />
      </Row>
      <OtherSpeciesNotice />
    </>
  )
}
