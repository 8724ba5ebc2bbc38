'use client'

import { PasswordInput, TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useRouter, useSearchParams } from 'next/navigation'
import { Form } from '@/base/forms/Form.tsx'
import { useDraft } from '@/base/forms/use-draft.ts'
import { LinkButton } from '@/base/ui/Button.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { Doorway } from '@/parts/doorway/Doorway.tsx'
import { OthersLine } from '@/parts/live/OthersLine.tsx'
import { useLookAtQueue } from '@/parts/live/use-outbox.ts'
import { serverOptions, useSignIn } from '@/parts/session/queries.ts'
import { CodeStep } from './CodeStep.tsx'
import { toSafePath } from './safe-path.ts'

export function SignInPage() {
  const router = useRouter()
  const next = toSafePath(useSearchParams().get('next'))
  const server = useQuery(serverOptions())
  useLookAtQueue()
  const signIn = useSignIn()
  const { draft, change } = useDraft({ email: '', password: '' })
  if (signIn.data?.asksCode) return <CodeStep onDone={() => router.replace(next)} onBack={() => signIn.reset()} />
  return (
    <Doorway title="Sign in">
      <OthersLine />
      <Form
        submitLabel="Sign in"
        isBusy={signIn.isPending}
        error={signIn.error}
        onSubmit={() => signIn.mutate(draft, { onSuccess: ({ asksCode }) => !asksCode && router.replace(next) })}
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
      {server.data && <AboutServer {...server.data} />}
    </Doorway>
  )
}

/** What a newcomer needs to know: where the demo's sign-ins are, and how a new server gets its owner. */
function AboutServer({ isClaimed, hasDemoRoom }: { isClaimed: boolean; hasDemoRoom: boolean }) {
  return (
    <>
      {hasDemoRoom && (
        <p>To look around the demo room, use one of its sign-ins: they were printed where the server was started.</p>
      )}
      {!isClaimed && (
        <Notice title={hasDemoRoom ? 'For a room of your own' : 'This server is new'}>
          <p>
            A one-time code was printed where the server was first started. With it you make your own account, as its
            first owner.
          </p>
          <LinkButton href="/claim" variant="default">
            Enter the code
          </LinkButton>
        </Notice>
      )}
    </>
  )
}
