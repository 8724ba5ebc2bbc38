'use client'

import { TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { Form } from '@/base/forms/Form.tsx'
import { useRoom } from '@/base/room/room-context.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import styles from '@/parts/gauges/gauges.module.css'
import { useChangeWebhook, webhookOptions } from '@/parts/reach/queries.ts'

/** Where every alarm is posted to as well, signed, so that whatever takes it knows whom it is from. */
export function WebhookForm() {
  const room = useRoom()
  const webhook = useQuery(webhookOptions(room.id))
  return (
    <Loaded query={webhook} skeleton={<Bones heights={[6]} />} what="The webhook">
      {({ url, secret }) => (
        <>
          <AddressForm key={url} url={url} />
          {secret !== null && (
            <p className={styles.soft}>
              Each message is signed as Standard Webhooks has it, with the secret <code>{secret}</code>
            </p>
          )}
        </>
      )}
    </Loaded>
  )
}

function AddressForm({ url }: { url: string | null }) {
  const change = useChangeWebhook(useRoom().id)
  const [typed, setTyped] = useState(url ?? '')
  return (
    <Form
      submitLabel="Save the address"
      isBusy={change.isPending}
      error={change.error}
      onSubmit={() => change.mutate(typed.trim() === '' ? null : typed.trim())}
    >
      <TextInput
        label="Address"
        description="Say: https://hub.example.org/alarms. Empty: none."
        value={typed}
        onChange={(event) => setTyped(event.currentTarget.value)}
      />
    </Form>
  )
}
