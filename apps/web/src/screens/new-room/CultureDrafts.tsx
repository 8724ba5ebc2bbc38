'use client'

import { rotiferStrains, type UnitSystem } from '@fryward/shared'
import { strainLabels } from '@fryward/words'
import { ChoiceChips } from '@/base/forms/Chips.tsx'
import { NumberBox } from '@/base/forms/NumberBox.tsx'
import { VesselDrafts } from './VesselDrafts.tsx'
import type { CultureDraft } from './wizard-draft.ts'

type Props = { cultures: CultureDraft[]; units: UnitSystem; onCultures: (cultures: CultureDraft[]) => void }

export function CultureDrafts({ cultures, units, onCultures }: Props) {
  return (
    <VesselDrafts
      legend="Rotifer cultures"
      word="culture"
      firstLabel="Add a rotifer culture"
      vessels={cultures}
      units={units}
      make={(id): CultureDraft => ({ id, name: `R${id}`, strain: 'L', volume: '', density: '' })}
      onVessels={onCultures}
      beside={(culture, change) => (
        <NumberBox
          label="Density now"
          help="If counted"
          unitWord="per mL"
          text={culture.density}
          onText={(density) => change({ density })}
        />
      )}
      under={(culture, change) => (
        <ChoiceChips
          legend="Strain"
          choices={rotiferStrains.map((value) => ({ value, label: strainLabels[value] }))}
          value={culture.strain}
          onChoose={(value) => {
            const strain = rotiferStrains.find((one) => one === value)
            if (strain) change({ strain })
          }}
        />
      )}
    />
  )
}
