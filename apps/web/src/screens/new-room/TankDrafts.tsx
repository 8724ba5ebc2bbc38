'use client'

import { tankKinds, type UnitSystem } from '@fryward/shared'
import { tankKindLabels } from '@fryward/words'
import { SelectBox } from '@/base/forms/SelectBox.tsx'
import { VesselDrafts } from './VesselDrafts.tsx'
import type { TankDraft } from './wizard-draft.ts'

type Props = { tanks: TankDraft[]; units: UnitSystem; onTanks: (tanks: TankDraft[]) => void }

export function TankDrafts({ tanks, units, onTanks }: Props) {
  return (
    <VesselDrafts
      legend="Tanks"
      word="tank"
      firstLabel="Add a tank"
      vessels={tanks}
      units={units}
      make={(id): TankDraft => ({ id, name: `T${id}`, kind: 'broodstock', volume: '' })}
      onVessels={onTanks}
      under={(tank, change) => (
        <SelectBox
          label="For"
          value={tank.kind}
          onChoose={(value) => {
            const kind = tankKinds.find((one) => one === value)
            if (kind) change({ kind })
          }}
          choices={tankKinds.map((value) => ({ value, label: tankKindLabels[value] }))}
        />
      )}
    />
  )
}
