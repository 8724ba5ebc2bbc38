'use client'

import type { CreatedDevice } from '@fryward/shared'
import { TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { Form } from '@/base/forms/Form.tsx'
import { useMay, useRoom } from '@/base/room/room-context.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { Card, Page, Section } from '@/base/ui/Page.tsx'
import { Alarms } from '@/parts/gauges/Alarms.tsx'
import { devicesOptions, useCreateDevice } from '@/parts/gauges/queries.ts'
import { BrokerSection } from './BrokerSection.tsx'
import { DeviceList } from './DeviceList.tsx'
import { FreshToken } from './FreshToken.tsx'
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
              <DeviceList devices={inUse} />
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
