'use client'

import { TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useParams } from 'next/navigation'
import { useState } from 'react'
import { Form } from '@/base/forms/Form.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { LinkButton } from '@/base/ui/Button.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { Doorway } from '@/parts/doorway/Doorway.tsx'
import { NewPasswordInput } from '@/parts/session/AccountFields.tsx'
import { passwordResetOptions, useGiveNewPassword } from '@/parts/session/queries.ts'

/** Where a mailed link leads: whose password it is, and the new one. */
export function NewPasswordPage() {
  const { token } = useParams<{ token: string }>()
  const reset = useQuery(passwordResetOptions(token))
  const give = useGiveNewPassword(token)
  return (
    <Doorway title="A new password">
      {give.isSuccess ? (
        <Notice title="Your new password holds">
          <p>Every browser that was signed in is signed out.</p>
          <LinkButton href="/sign-in" variant="filled">
            Sign in
          </LinkButton>
        </Notice>
      ) : (
        <>
          <Loaded query={reset} skeleton={<Bones heights={[5, 5]} />} what="The link">
            {({ email }) => <Choose email={email} give={give} />}
          </Loaded>
          {reset.isError && <LinkButton href="/sign-in?forgot=1">Ask once more</LinkButton>}
        </>
      )}
    </Doorway>
  )
}

function Choose({ email, give }: { email: string; give: ReturnType<typeof useGiveNewPassword> }) {
  const [password, setPassword] = useState('')
  return (
    <Form
      submitLabel="Take this password"
      isBusy={give.isPending}
      error={give.error}
      onSubmit={() => give.mutate(password)}
    >
      {/* Read by whatever keeps passwords: with it the new one is kept for the right account. */}
      <TextInput label="Email" type="email" autoComplete="username" readOnly value={email} />
      <NewPasswordInput label="Your new password" value={password} onChange={setPassword} />
    </Form>
  )
}
