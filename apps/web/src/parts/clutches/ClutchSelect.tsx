'use client'

import { useQuery } from '@tanstack/react-query'
import { SelectBox } from '@/base/forms/SelectBox.tsx'
import { useRoom } from '@/base/room/room-context.tsx'
import { clutchesOptions } from './queries.ts'

type Props = { label: string; species: string; value: string; onChoose: (clutchId: string) => void }

/** A clutch of this room and of one species that a fish grew up from; the first choice is that nobody knows of one. */
export function ClutchSelect({ label, species, value, onChoose }: Props) {
  const clutches = useQuery(clutchesOptions(useRoom().id)).data ?? []
  const own = clutches.filter((clutch) => clutch.species === species && clutch.state === 'hatched')
  return (
    <SelectBox
      label={label}
      value={value}
      onChoose={onChoose}
      choices={[
        { value: '', label: 'none of this room, or not known' },
        ...own.map((clutch) => ({ value: clutch.id, label: clutch.name })),
      ]}
    />
  )
}
