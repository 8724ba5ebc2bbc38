'use client'

import { TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { Form } from '@/base/forms/Form.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { LinkButton } from '@/base/ui/Button.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { Doorway } from '@/parts/doorway/Doorway.tsx'
import { serverOptions, useAskForNewPassword } from '@/parts/session/queries.ts'

type Props = { email: string; onEmail: (email: string) => void }

/** For whoever forgot: a link by mail, or who else can let them in. */
export function ForgotStep(typed: Props) {
  const server = useQuery(serverOptions())
  return (
    <Doorway title="A new password">
      <Loaded query={server} skeleton={<Bones heights={[5]} />} what="What this server can do">
        {({ sendsMail }) => (sendsMail ? <ByMail {...typed} /> : <WithoutMail />)}
      </Loaded>
      <LinkButton href="/sign-in" variant="subtle">
        Back to signing in
      </LinkButton>
    </Doorway>
  )
}

function ByMail({ email, onEmail }: Props) {
  const ask = useAskForNewPassword()
  if (ask.isSuccess)
    return (
      <Notice title="Look into your mailbox">
        <p>
          If {ask.variables} has an account here, a mail with a link is there within a few minutes; look among unwanted
          mail too. The link is good once, and for an hour.
        </p>
      </Notice>
    )
  return (
    <Form
      submitLabel="Mail me a link"
      isBusy={ask.isPending}
      error={ask.error}
      onSubmit={() => ask.mutate(email.trim())}
    >
      <TextInput
        label="Email"
        description="With it you sign in; the link goes there"
        type="email"
        autoComplete="username"
        inputMode="email"
        required
        withAsterisk={false}
        value={email}
        onChange={(event) => onEmail(event.currentTarget.value)}
      />
    </Form>
  )
}

function WithoutMail() {
  return (
    <Notice title="This server sends no mail">
      <p>Ask the owner of the server: under More, People they make you a link.</p>
      <p>
        Are you the owner? On the machine that Fryward runs on, <code>npm run reset-password YOUR-EMAIL</code> prints a
        new password.
      </p>
    </Notice>
  )
}
