'use client'

import { SelectBox } from '@/base/forms/SelectBox.tsx'
import type { TankDraft } from './wizard-draft.ts'

type Props = { tanks: TankDraft[]; tankId: number; onTank: (tankId: number) => void }

/** One of the tanks of the same form. Where that was taken out again the box would show another one as chosen. */
export function DraftTankSelect({ tanks, tankId, onTank }: Props) {
  const isGone = !tanks.some(({ id }) => id === tankId)
  return (
    <SelectBox
      label="In the tank"
      value={String(tankId)}
      onChoose={(id) => onTank(Number(id))}
      choices={[
        ...(isGone ? [{ value: String(tankId), label: 'Choose a tank' }] : []),
        ...tanks.map((tank) => ({ value: String(tank.id), label: tank.name })),
      ]}
    />
  )
}
