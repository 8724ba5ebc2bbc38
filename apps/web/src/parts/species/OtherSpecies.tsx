'use client'

import { readOtherSpecies } from '@fryward/shared'
import { careLabels } from '@fryward/words'
import { useState } from 'react'
import { useMay } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { OtherSpeciesForm } from './OtherSpeciesForm.tsx'
import { OtherSpeciesNotice } from './OtherSpeciesNotice.tsx'
import { daysLabels } from './typed-species.ts'

/** What this room knows of a species without a profile, for an owner to say anew; nothing for one that has a profile. */
export function OtherSpecies({ id }: { id: string }) {
  const mayOwn = useMay('own')
  const [isOpen, setOpen] = useState(false)
  const said = readOtherSpecies(id)
  if (!said) return null
  const { name, eggDays, care } = said
  return (
    <OtherSpeciesNotice>
      <p>
        Known here of <em>{name}</em>: its eggs are {careLabels[care]},{' '}
        {eggDays === null
          ? 'nobody has said for how long'
          : `${eggDays} ${eggDays === 1 ? 'day' : 'days'} ${daysLabels[care]}`}
        .
      </p>
      {mayOwn && !isOpen && (
        <Button variant="default" onClick={() => setOpen(true)}>
          Change what is known
        </Button>
      )}
      {isOpen && <OtherSpeciesForm id={id} said={said} onDone={() => setOpen(false)} />}
    </OtherSpeciesNotice>
  )
}
