'use client'

import { addressOf, type Device } from '@fryward/shared'
import { useState } from 'react'
import { ChoiceChips } from '@/base/forms/Chips.tsx'
import styles from '@/parts/gauges/gauges.module.css'
import { type Asked, sketches } from './sketches.ts'

type Props = { device: Pick<Device, 'gauges'>; token?: string }

/** What a device runs to post here, filled in with this server's address and the device's first gauge. */
export function Sketches({ device, token = 'THE-TOKEN-OF-THIS-DEVICE' }: Props) {
  const [chosen, setChosen] = useState<string>(sketches[0].value)
  const gauge = device.gauges.find(({ endedAt }) => endedAt === null)?.key ?? 't1'
  const asked: Asked = { address: new URL(addressOf('postReadings'), window.location.origin).href, gauge, token }
  const sketch = sketches.find(({ value }) => value === chosen) ?? sketches[0]
  return (
    <div className={styles.gauge}>
      <ChoiceChips legend="From" choices={sketches} value={chosen} onChoose={setChosen} />
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what may scroll must be reachable by keyboard */}
      <pre className={styles.code} tabIndex={0}>
        {sketch.write(asked)}
      </pre>
    </div>
  )
}
