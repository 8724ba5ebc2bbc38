'use client'

import type { Broker } from '@fryward/shared'
import { sayMoment } from '@fryward/words'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { serverNow } from '@/base/api/server-clock.ts'
import { useMay, useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { Card, Section } from '@/base/ui/Page.tsx'
import styles from '@/parts/gauges/gauges.module.css'
import { brokerOptions } from '@/parts/gauges/queries.ts'
import { BrokerForm } from './BrokerForm.tsx'
import { RefusedMessages } from './RefusedMessages.tsx'

/** The broker that devices are heard by, how that goes, and what was not kept of what came. */
export function BrokerSection() {
  const broker = useQuery(brokerOptions(useRoom().id))
  const mayOwn = useMay('own')
  const [isOpen, setOpen] = useState(false)
  return (
    <Section title="By MQTT">
      <Loaded query={broker} skeleton={<Bones heights={[4]} />} what="The broker">
        {(data) => (
          <>
            <BrokerState broker={data} />
            <RefusedMessages refusals={data.refusals} />
            {mayOwn && !isOpen && (
              <div>
                <Button variant="default" onClick={() => setOpen(true)}>
                  {data.url === null ? 'Name a broker' : 'Change the broker'}
                </Button>
              </div>
            )}
            {isOpen && (
              <Card>
                <BrokerForm broker={data} onDone={() => setOpen(false)} />
              </Card>
            )}
          </>
        )}
      </Loaded>
    </Section>
  )
}

function BrokerState({ broker: { url, isConnected, lastConnectedAt, trouble, troubleAt } }: { broker: Broker }) {
  const voice = useVoice()
  const say = (at: string) => sayMoment(at, serverNow(), voice)
  if (url === null)
    return (
      <p className={styles.soft}>
        No broker is named here. Where devices publish by MQTT, their readings come in through one.
      </p>
    )
  if (!isConnected)
    return (
      <Notice tone="worry" title={`Not connected to ${url}`}>
        <p>{trouble ?? 'It is being tried.'}</p>
        {lastConnectedAt && <p className={styles.soft}>Last connected {say(lastConnectedAt)}.</p>}
      </Notice>
    )
  return (
    <>
      <p role="status">Connected to {url}.</p>
      {trouble && troubleAt && (
        <p className={styles.soft}>
          Last trouble, {say(troubleAt)}: {trouble}
        </p>
      )}
    </>
  )
}
