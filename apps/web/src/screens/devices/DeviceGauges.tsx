'use client'

import type { Device, Gauge } from '@fryward/shared'
import { useState } from 'react'
import { FormProblem } from '@/base/forms/Form.tsx'
import { useMay, useRoom } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { Card } from '@/base/ui/Page.tsx'
import { GaugeCharts } from '@/parts/gauges/GaugeCharts.tsx'
import styles from '@/parts/gauges/gauges.module.css'
import { useEndGauge } from '@/parts/gauges/queries.ts'
import { GaugeForm } from './GaugeForm.tsx'
import { ReadingsImport } from './ReadingsImport.tsx'

/** What a device reads, each with its chart and its limits. */
export function DeviceGauges({ device }: { device: Device }) {
  const mayManage = useMay('manage')
  const [isAdding, setAdding] = useState(false)
  const inUse = device.gauges.filter(({ endedAt }) => endedAt === null)
  return (
    <>
      <ul className={styles.gauges} aria-label={`Gauges of ${device.name}`}>
        {inUse.map((gauge) => (
          <li key={gauge.id} id={gauge.id}>
            <Card>
              <p className={styles.soft}>
                <code>{gauge.key}</code> in {gauge.subject.name}
              </p>
              <GaugeCharts gauges={[gauge]} />
              {mayManage && <Limits gauge={gauge} />}
            </Card>
          </li>
        ))}
      </ul>
      {mayManage && !isAdding && (
        <div>
          <Button variant="default" onClick={() => setAdding(true)}>
            Add a gauge to {device.name}
          </Button>
        </div>
      )}
      {isAdding && (
        <Card>
          <GaugeForm device={device} onDone={() => setAdding(false)} />
        </Card>
      )}
    </>
  )
}

function Limits({ gauge }: { gauge: Gauge }) {
  const room = useRoom()
  const end = useEndGauge(room.id)
  const [open, setOpen] = useState<'limits' | 'import' | 'end'>()
  const close = () => setOpen(undefined)
  if (open === 'limits') return <GaugeForm gauge={gauge} onDone={close} />
  if (open === 'import') return <ReadingsImport gauge={gauge} onDone={close} />
  if (open === 'end')
    return (
      <>
        <p>Take {gauge.key} out of use? Its readings stay, and its limits are watched no more.</p>
        <FormProblem error={end.error} />
        <div className={styles.spans}>
          <Button variant="filled" isBusy={end.isPending} onClick={() => end.mutate(gauge.id)}>
            Take it out of use
          </Button>
          <Button variant="subtle" onClick={close}>
            Keep it
          </Button>
        </div>
      </>
    )
  return (
    <div className={styles.spans}>
      <Button variant="default" aria-label={`Limits of ${gauge.key}`} onClick={() => setOpen('limits')}>
        Limits
      </Button>
      <Button variant="subtle" aria-label={`Bring readings in: ${gauge.key}`} onClick={() => setOpen('import')}>
        Bring readings in
      </Button>
      <Button variant="subtle" aria-label={`Take out of use: ${gauge.key}`} onClick={() => setOpen('end')}>
        Take out of use
      </Button>
    </div>
  )
}
