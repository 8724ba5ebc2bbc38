'use client'

import type { Device } from '@fryward/shared'
import { useState } from 'react'
import { serverNow } from '@/base/api/server-clock.ts'
import { FormProblem } from '@/base/forms/Form.tsx'
import { useMay, useRoom } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { Section } from '@/base/ui/Page.tsx'
import { useRestoreDevice, useRestoreGauge } from '@/parts/gauges/queries.ts'

// As long as the API puts one back.
const dayMs = 86_400_000

/** Devices and gauges that were taken out since yesterday, with the way back; nothing when there are none. */
export function TakenOut({ devices }: { devices: Device[] }) {
  const room = useRoom()
  const [mayOwn, mayManage] = [useMay('own'), useMay('manage')]
  const restoreDevice = useRestoreDevice(room.id)
  const restoreGauge = useRestoreGauge(room.id)
  const [since] = useState(() => serverNow().getTime() - dayMs)
  const isRecent = (at: string | null) => at !== null && Date.parse(at) > since
  const outDevices = mayOwn ? devices.filter(({ revokedAt }) => isRecent(revokedAt)) : []
  const outGauges = mayManage
    ? devices
        .filter(({ revokedAt }) => revokedAt === null)
        .flatMap(({ gauges, name }) =>
          gauges.filter(({ endedAt }) => isRecent(endedAt)).map((one) => ({ ...one, name })),
        )
    : []
  if (outDevices.length + outGauges.length === 0) return null
  return (
    <Section title="Taken out since yesterday">
      <FormProblem error={restoreDevice.error ?? restoreGauge.error} />
      {outDevices.map(({ id, name }) => (
        <div key={id}>
          <Button onClick={() => restoreDevice.mutate(id)}>Let {name} in again</Button>
        </div>
      ))}
      {outGauges.map(({ id, key, name }) => (
        <div key={id}>
          <Button onClick={() => restoreGauge.mutate(id)}>
            Put {key} of {name} back into use
          </Button>
        </div>
      ))}
    </Section>
  )
}
