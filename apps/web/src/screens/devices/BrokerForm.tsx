'use client'

import type { Broker } from '@fryward/shared'
import { PasswordInput, Textarea, TextInput } from '@mantine/core'
import { useState } from 'react'
import { Form } from '@/base/forms/Form.tsx'
import { useRoom } from '@/base/room/room-context.tsx'
import { useChangeBroker } from '@/parts/gauges/queries.ts'

const orNull = (text: string): string | null => (text.trim() === '' ? null : text.trim())

/** Which broker, and as whom. The password is typed and sent, and shown nowhere again. */
export function BrokerForm({ broker, onDone }: { broker: Broker; onDone: () => void }) {
  const change = useChangeBroker(useRoom().id)
  const [url, setUrl] = useState(broker.url ?? '')
  const [username, setUsername] = useState(broker.username ?? '')
  const [password, setPassword] = useState('')
  const [authority, setAuthority] = useState(broker.authority ?? '')
  const isKept = broker.hasPassword && url.trim() === broker.url
  const send = () =>
    change.mutate(
      {
        ...{ url: orNull(url), username: orNull(username), authority: orNull(authority) },
        // An empty box leaves the one that is kept, as long as somebody signs in with it.
        ...(password !== '' ? { password } : username.trim() === '' ? { password: null } : {}),
      },
      { onSuccess: onDone },
    )
  return (
    <Form
      submitLabel="Save the broker"
      isBusy={change.isPending}
      error={change.error}
      onSubmit={send}
      onCancel={onDone}
    >
      <TextInput
        label="Address"
        description="Say: mqtt://broker.lan:1883, or mqtts:// for TLS. Empty: none."
        value={url}
        onChange={(event) => setUrl(event.currentTarget.value)}
      />
      <TextInput
        label="User name"
        description="One of its own for Fryward is best; it need only read. Empty: none."
        autoComplete="off"
        value={username}
        onChange={(event) => setUsername(event.currentTarget.value)}
      />
      <PasswordInput
        label="Password"
        description={isKept ? 'One is kept. Leave this empty to keep it.' : 'Empty: none.'}
        autoComplete="new-password"
        value={password}
        onChange={(event) => setPassword(event.currentTarget.value)}
      />
      {url.trim().startsWith('mqtts:') && (
        <Textarea
          label="Certificate of its authority"
          description="As PEM, where no public authority signed the broker’s own. Empty: a public one did."
          autosize
          minRows={2}
          maxRows={8}
          value={authority}
          onChange={(event) => setAuthority(event.currentTarget.value)}
        />
      )}
    </Form>
  )
}
