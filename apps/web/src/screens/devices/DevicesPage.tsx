'use client'

import type { CreatedDevice, Device } from '@fryward/shared'
import { sayMoment } from '@fryward/words'
import { TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { serverNow } from '@/base/api/server-clock.ts'
import { Form, FormProblem } from '@/base/forms/Form.tsx'
import { useMay, useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { Card, Page, Section } from '@/base/ui/Page.tsx'
import { Alarms } from '@/parts/gauges/Alarms.tsx'
import styles from '@/parts/gauges/gauges.module.css'
import { devicesOptions, useCreateDevice, useRevokeDevice } from '@/parts/gauges/queries.ts'
import { BrokerSection } from './BrokerSection.tsx'
import { DeviceGauges } from './DeviceGauges.tsx'
import { DeviceTopic } from './DeviceTopic.tsx'
import { FreshToken } from './FreshToken.tsx'
import { Sketches } from './Sketches.tsx'
import { TakenOut } from './TakenOut.tsx'

/** What hangs in the water and posts what it reads: who may, what they read, and within which limits. */
export function DevicesPage() {
  const room = useRoom()
  const devices = useQuery(devicesOptions(room.id))
  const mayOwn = useMay('own')
  const [made, setMade] = useState<CreatedDevice>()
  return (
    <Page title="Devices" lead="Probes that post what they read, and when to be told">
      <Alarms />
      {made && <FreshToken made={made} />}
      <Loaded query={devices} skeleton={<Bones heights={[14, 14]} />} what="The list of devices">
        {(data) => {
          const inUse = data.filter(({ revokedAt }) => revokedAt === null)
          return (
            <>
              {inUse.length === 0 && (
                <p>
                  No device posts here yet. Let one in, and give it its token: a temperature probe in a larval tank is a
                  good first one.
                </p>
              )}
              {inUse.map((device) => (
                <DeviceCard key={device.id} device={device} />
              ))}
              <TakenOut devices={data} />
            </>
          )
        }}
      </Loaded>
      {mayOwn && <NewDevice onMade={setMade} />}
      <BrokerSection />
    </Page>
  )
}

function NewDevice({ onMade }: { onMade: (made: CreatedDevice) => void }) {
  const create = useCreateDevice(useRoom().id)
  const [name, setName] = useState('')
  const done = (made: CreatedDevice) => {
    setName('')
    onMade(made)
  }
  return (
    <Section title="Let a device in">
      <Card>
        <Form
          submitLabel="Make its token"
          isBusy={create.isPending}
          error={create.error}
          onSubmit={() => create.mutate({ name }, { onSuccess: done })}
        >
          <TextInput
            label="What you call it"
            description="By where it stands, say: Rack, Shelf 2"
            required
            value={name}
            onChange={(event) => setName(event.currentTarget.value)}
          />
        </Form>
      </Card>
    </Section>
  )
}

// A device that posts each ten minutes is heard; it is marked to the minute.
const heardMs = 15 * 60_000
const isHeard = (at: string): boolean => serverNow().getTime() - Date.parse(at) <= heardMs

function DeviceCard({ device }: { device: Device }) {
  const voice = useVoice()
  const room = useRoom()
  const mayOwn = useMay('own')
  const revoke = useRevokeDevice(room.id)
  const [isAsking, setAsking] = useState(false)
  return (
    <Section
      title={device.name}
      action={
        mayOwn && (
          <Button variant="subtle" aria-label={`Take out: ${device.name}`} onClick={() => setAsking(true)}>
            Take out
          </Button>
        )
      }
    >
      <p className={styles.soft} role="status">
        {device.lastSeenAt
          ? `${isHeard(device.lastSeenAt) ? 'It works: last heard' : 'Not heard for a while: last'} ${sayMoment(device.lastSeenAt, serverNow(), voice)}.`
          : 'Nothing has come from it yet.'}
      </p>
      <details>
        <summary>How it posts here</summary>
        <Sketches device={device} />
        <DeviceTopic device={device} />
      </details>
      <FormProblem error={revoke.error} />
      {isAsking && (
        <Card>
          <p>Take {device.name} out? Its token opens nothing from then on; what it read stays.</p>
          <div className={styles.spans}>
            <Button variant="filled" isBusy={revoke.isPending} onClick={() => revoke.mutate(device.id)}>
              Take it out
            </Button>
            <Button variant="subtle" onClick={() => setAsking(false)}>
              Keep it
            </Button>
          </div>
        </Card>
      )}
      <DeviceGauges device={device} />
    </Section>
  )
}
