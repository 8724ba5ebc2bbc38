'use client'

import { TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { Form } from '@/base/forms/Form.tsx'
import { useDraft } from '@/base/forms/use-draft.ts'
import { LinkButton } from '@/base/ui/Button.tsx'
import { Doorway } from '@/parts/doorway/Doorway.tsx'
import { AccountFields, emptyAccount } from '@/parts/session/AccountFields.tsx'
import { serverOptions, useClaim } from '@/parts/session/queries.ts'

/** The first account of a server: the code proves that whoever types it can read the server's own terminal. */
export function ClaimPage() {
  const router = useRouter()
  const claim = useClaim()
  const server = useQuery(serverOptions())
  const [code, setCode] = useState('')
  const { draft, change } = useDraft(emptyAccount)
  // Right after claiming it is true too; then one is on the way to the rooms.
  if (server.data?.isClaimed && claim.isIdle) return <ClaimedAlready />
  return (
    <Doorway
      title="Become the first owner"
      lead="The one-time code was printed where the server was started, once, at its first start."
    >
      <Form
        submitLabel="Make it mine"
        isBusy={claim.isPending}
        error={claim.error}
        onSubmit={() => claim.mutate({ ...draft, code }, { onSuccess: () => router.replace('/rooms') })}
      >
        <TextInput
          label="One-time code"
          autoComplete="one-time-code"
          required
          value={code}
          onChange={(event) => setCode(event.currentTarget.value)}
        />
        <AccountFields account={draft} change={change} />
      </Form>
    </Doorway>
  )
}

function ClaimedAlready() {
  return (
    <Doorway title="This server has an owner" lead="Sign in, or ask the owner of a room for an invitation link.">
      <LinkButton href="/rooms" variant="filled">
        To the rooms
      </LinkButton>
    </Doorway>
  )
}
