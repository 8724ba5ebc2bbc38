'use client'

import { useSyncExternalStore } from 'react'
import { ChoiceChips } from '@/base/forms/Chips.tsx'
import { keepLook, type Look, looks, onLookChange, readLook } from '@/base/look/looks.ts'

const labels = {
  system: 'As this device',
  day: 'Day',
  night: 'Night',
  lights_out: 'Lights out',
} as const satisfies Record<Look, string>

/** How the pages look on this device. Lights out is for the hatch room: black and one dim red. */
export function LookChoice() {
  const look = useSyncExternalStore(onLookChange, readLook, (): Look => 'system')
  return (
    <ChoiceChips
      legend="On this device"
      choices={looks.map((value) => ({ value, label: labels[value] }))}
      value={look}
      onChoose={(value) => {
        const chosen = looks.find((one) => one === value)
        if (chosen) keepLook(chosen)
      }}
    />
  )
}
