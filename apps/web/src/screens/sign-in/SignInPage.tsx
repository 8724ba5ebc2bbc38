'use client'

import type { ServerStatus } from '@fryward/shared'
import { PasswordInput, TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useRouter, useSearchParams } from 'next/navigation'
import { Form } from '@/base/forms/Form.tsx'
import { useDraft } from '@/base/forms/use-draft.ts'
import { Button, LinkButton } from '@/base/ui/Button.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { Doorway } from '@/parts/doorway/Doorway.tsx'
import { OthersLine } from '@/parts/live/OthersLine.tsx'
import { useLookAtQueue } from '@/parts/live/use-outbox.ts'
import { serverOptions, useSignIn } from '@/parts/session/queries.ts'
import { CodeStep } from './CodeStep.tsx'
import { ForgotStep } from './ForgotStep.tsx'
import { toSafePath } from './safe-path.ts'
import styles from './sign-in.module.css'

export function SignInPage() {
  const router = useRouter()
  const asked = useSearchParams()
  const next = toSafePath(asked.get('next'))
  const server = useQuery(serverOptions())
  useLookAtQueue()
  const signIn = useSignIn()
  const { draft, change } = useDraft({ email: '', password: '' })
  if (signIn.data?.asksCode) return <CodeStep onDone={() => router.replace(next)} onBack={() => signIn.reset()} />
  if (asked.has('forgot')) return <ForgotStep email={draft.email} onEmail={(email) => change({ email })} />
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
      <LinkButton href="/sign-in?forgot=1" variant="subtle">
        I forgot my password
      </LinkButton>
      {server.data && <AboutServer server={server.data} onTake={(email) => change({ email })} />}
    </Doorway>
  )
}

/** What a newcomer needs to know: where the demo's sign-ins are, and how a new server gets its owner. */
function AboutServer({ server, onTake }: { server: ServerStatus; onTake: (email: string) => void }) {
  const { isClaimed, hasDemoRoom, demoPeople } = server
  return (
    <>
      {demoPeople.length > 0 && (
        <Notice title="To look around the demo room">
          <p>Choose who you are. The password of each was printed where the server was started.</p>
          <div className={styles.people}>
            {demoPeople.map(({ email, name }) => (
              <Button key={email} onClick={() => onTake(email)}>
                {name}
              </Button>
            ))}
          </div>
        </Notice>
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
