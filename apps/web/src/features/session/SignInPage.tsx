'use client'

import { PasswordInput, TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { useRouter, useSearchParams } from 'next/navigation'
import { Form } from '@/forms/Form.tsx'
import { useDraft } from '@/forms/use-draft.ts'
import { Notice } from '@/ui/Notice.tsx'
import { Doorway } from './Doorway.tsx'
import { serverOptions, useSignIn } from './queries.ts'

/** Only a path of this site: a link must not sign somebody in and send them elsewhere. */
const toSafePath = (next: string | null) =>
  next?.startsWith('/') && !next.startsWith('//') && !next.includes('\\') ? next : '/rooms'

export function SignInPage() {
  const router = useRouter()
  const next = toSafePath(useSearchParams().get('next'))
  const server = useQuery(serverOptions())
  const signIn = useSignIn()
  const { draft, change } = useDraft({ email: '', password: '' })
  return (
    <Doorway title="Sign in">
      {server.data?.isClaimed === false && (
        <Notice title="Nobody owns this server yet">
          <Link href="/claim">Become its first owner</Link>
        </Notice>
      )}
      <Form
        submitLabel="Sign in"
        isBusy={signIn.isPending}
        error={signIn.error}
        onSubmit={() => signIn.mutate(draft, { onSuccess: () => router.replace(next) })}
      >
        <TextInput
          label="Email"
          type="email"
          autoComplete="username"
          inputMode="email"
          required
          withAsterisk={false}
          value={draft.email}
          onChange={(event) => change({ email: event.currentTarget.value })}
        />
        <PasswordInput
          label="Password"
          autoComplete="current-password"
          required
          withAsterisk={false}
          visibilityToggleButtonProps={{ 'aria-label': 'Show or hide the password' }}
          value={draft.password}
          onChange={(event) => change({ password: event.currentTarget.value })}
        />
      </Form>
      {server.data?.hasDemoRoom && <p>The sign-ins of the demo room were printed where the server was started.</p>}
    </Doorway>
  )
}
