'use client'

import type { Device } from '@fryward/shared'
import { TextInput } from '@mantine/core'
import { useDeferredValue, useState } from 'react'
import { useHashTarget } from '@/base/ui/use-hash-target.ts'
import { useStandingAlarms } from '@/parts/gauges/standing-alarms.ts'
import { DeviceFold } from './DeviceFold.tsx'
import styles from './devices.module.css'
import { findDevices, isOf } from './find-devices.ts'

// So many are looked over sooner than a word is typed.
const worthFinding = 7

/** Devices in use, each in a line. Open is what is new, in trouble, linked to by its id or a gauge's, or alone. */
export function DeviceList({ devices }: { devices: Device[] }) {
  const troubledIds = new Set(useStandingAlarms().map(({ gauge }) => gauge.id))
  const [words, setWords] = useState('')
  const found = findDevices(devices, useDeferredValue(words))
  const targetId = useHashTarget((id) => devices.some((device) => isOf(device, id)))
  const isWanted = (device: Device) =>
    devices.length === 1 || device.lastSeenAt === null || device.gauges.some(({ id }) => troubledIds.has(id))
  return (
    <>
      {devices.length > worthFinding && (
        <>
          <TextInput
            type="search"
            label="Find a device"
            description="By its name, what it reads, or where"
            autoComplete="off"
            value={words}
            onChange={(event) => setWords(event.currentTarget.value)}
          />
          <p role="status" className={styles.found}>
            {found.length === devices.length
              ? `${found.length} devices`
              : `${found.length} of ${devices.length} devices`}
          </p>
        </>
      )}
      <div className={styles.devices}>
        {found.map((device) => {
          const isTarget = isOf(device, targetId)
          // A link to one that was shut opens it again.
          return (
            <DeviceFold
              key={`${device.id} ${isTarget}`}
              device={device}
              isWanted={isTarget || isWanted(device)}
              troubledIds={troubledIds}
            />
          )
        })}
      </div>
    </>
  )
}
