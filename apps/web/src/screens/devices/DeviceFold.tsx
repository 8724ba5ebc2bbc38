'use client'

import type { Device, Id } from '@fryward/shared'
import { useState } from 'react'
import { DeviceBody } from './DeviceBody.tsx'
import { DeviceLine } from './DeviceLine.tsx'
import styles from './devices.module.css'

type Props = {
  device: Device
  /** It opens by itself, until somebody shuts it. */
  isWanted: boolean
  troubledIds: ReadonlySet<Id>
}

/** A device in a line; opened, all that it reads and how it posts. What is shut asks for no chart. */
export function DeviceFold({ device, isWanted, troubledIds }: Props) {
  const [chosen, setChosen] = useState<boolean>()
  const isOpen = chosen ?? isWanted
  return (
    <details
      id={device.id}
      className={styles.device}
      open={isOpen}
      onToggle={(event) => setChosen(event.currentTarget.open)}
    >
      <summary>
        <DeviceLine device={device} troubledIds={troubledIds} />
      </summary>
      {isOpen && <DeviceBody device={device} />}
    </details>
  )
}
