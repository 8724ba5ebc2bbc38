'use client'

import type { Device } from '@fryward/shared'
import { TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { Form } from '@/base/forms/Form.tsx'
import { useMay, useRoom } from '@/base/room/room-context.tsx'
import styles from '@/parts/gauges/gauges.module.css'
import { brokerOptions, useChangeDevice } from '@/parts/gauges/queries.ts'
import { publishing } from './sketches.ts'

/** Where a device publishes, for a room that names a broker. */
export function DeviceTopic({ device }: { device: Device }) {
  const room = useRoom()
  const mayOwn = useMay('own')
  const { url = null, username = null } = useQuery(brokerOptions(room.id)).data ?? {}
  if (url === null && device.topic === null) return null
  const gauge = device.gauges.find(({ endedAt }) => endedAt === null)?.key ?? 't1'
  return (
    <div className={styles.gauge}>
      {mayOwn && <TopicForm key={device.topic} device={device} />}
      {device.topic !== null && (
        <p className={styles.soft}>
          By MQTT, a number alone goes to{' '}
          <code>
            {device.topic}/{gauge}
          </code>
          , and readings as JSON or SenML, with their times, to <code>{device.topic}</code>. Whoever may publish there
          at the broker is taken for {device.name}.
        </p>
      )}
      {url !== null && device.topic !== null && (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: what may scroll must be reachable by keyboard
        <pre className={styles.code} tabIndex={0}>
          {publishing({ url, username, topic: `${device.topic}/${gauge}` })}
        </pre>
      )}
    </div>
  )
}

function TopicForm({ device }: { device: Device }) {
  const change = useChangeDevice(useRoom().id)
  const [topic, setTopic] = useState(device.topic ?? '')
  const send = () => {
    const wanted = topic.trim() === '' ? null : topic.trim()
    change.mutate({ deviceId: device.id, topic: wanted, version: device.version })
  }
  return (
    <Form submitLabel="Save the topic" isBusy={change.isPending} error={change.error} onSubmit={send}>
      <TextInput
        label={`Topic of ${device.name} at the broker`}
        description="Say: home/rack. What it calls a gauge comes after it. Empty: none."
        value={topic}
        onChange={(event) => setTopic(event.currentTarget.value)}
      />
    </Form>
  )
}
