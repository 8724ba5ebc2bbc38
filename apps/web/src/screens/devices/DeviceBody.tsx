'use client'

import type { Device } from '@fryward/shared'
import { sayMoment } from '@fryward/words'
import { useState } from 'react'
import { useServerNow } from '@/base/dates/use-now.ts'
import { FormProblem } from '@/base/forms/Form.tsx'
import { useMay, useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { Card } from '@/base/ui/Page.tsx'
import styles from '@/parts/gauges/gauges.module.css'
import { useRevokeDevice } from '@/parts/gauges/queries.ts'
import { DeviceGauges } from './DeviceGauges.tsx'
import { DeviceTopic } from './DeviceTopic.tsx'
import folds from './devices.module.css'
import { isHeard } from './heard.ts'
import { Sketches } from './Sketches.tsx'

/** What a device reads, how it posts here, and the way out. */
export function DeviceBody({ device }: { device: Device }) {
  const mayOwn = useMay('own')
  return (
    <div className={folds.body}>
      <LastSeen device={device} />
      <details>
        <summary>How it posts here</summary>
        <Sketches device={device} />
        <DeviceTopic device={device} />
      </details>
      <DeviceGauges device={device} />
      {mayOwn && <TakeOut device={device} />}
    </div>
  )
}

function LastSeen({ device: { lastSeenAt } }: { device: Device }) {
  const voice = useVoice()
  const now = useServerNow()
  return (
    <p className={styles.soft} role="status">
      {lastSeenAt
        ? `${isHeard(lastSeenAt, now) ? 'It works: last heard' : 'Not heard for a while: last'} ${sayMoment(lastSeenAt, now, voice)}.`
        : 'Nothing has come from it yet.'}
    </p>
  )
}

function TakeOut({ device }: { device: Device }) {
  const revoke = useRevokeDevice(useRoom().id)
  const [isAsking, setAsking] = useState(false)
  if (!isAsking)
    return (
      <div>
        <Button variant="subtle" aria-label={`Take out: ${device.name}`} onClick={() => setAsking(true)}>
          Take out
        </Button>
      </div>
    )
  return (
    <Card>
      <p>Take {device.name} out? Its token opens nothing from then on; what it read stays.</p>
      <FormProblem error={revoke.error} />
      <div className={styles.spans}>
        <Button variant="filled" isBusy={revoke.isPending} onClick={() => revoke.mutate(device.id)}>
          Take it out
        </Button>
        <Button variant="subtle" onClick={() => setAsking(false)}>
          Keep it
        </Button>
      </div>
    </Card>
  )
}
