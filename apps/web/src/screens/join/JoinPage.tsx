'use client'

import { roleLabels, roleSentences, sayDate, toPlainDate } from '@fryward/words'
import { useQuery } from '@tanstack/react-query'
import { useParams, useRouter } from 'next/navigation'
import { Form, FormProblem } from '@/base/forms/Form.tsx'
import { useDraft } from '@/base/forms/use-draft.ts'
import { useVoice } from '@/base/room/room-context.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { Link } from '@/base/ui/Link.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { Doorway } from '@/parts/doorway/Doorway.tsx'
import { AccountFields, emptyAccount } from '@/parts/session/AccountFields.tsx'
import { meOptions } from '@/parts/session/me.ts'
import { invitationPreviewOptions, useAcceptInvitation, useJoin } from '@/parts/session/queries.ts'

/** An invitation link: what it invites to, then joining as who is signed in or with a new account. */
export function JoinPage() {
  const voice = useVoice()
  const { token } = useParams<{ token: string }>()
  const preview = useQuery(invitationPreviewOptions(token))
  const me = useQuery(meOptions())
  return (
    <Doorway title="Join a room">
      <Loaded query={preview} skeleton={<Bones heights={[6, 14]} />} what="The invitation">
        {(invitation) => (
          <>
            <Notice title={`${invitation.invitedByName} invites you to ${invitation.roomName}`}>
              <p>
                As <strong>{roleLabels[invitation.role].toLowerCase()}</strong>. {roleSentences[invitation.role]} The
                link works until {sayDate(toPlainDate(invitation.expiresAt, 'UTC'), voice)}.
              </p>
            </Notice>
            {me.data ? (
              <AcceptAs token={token} name={me.data.user.name} />
            ) : (
              !me.isPending && <MakeAccount token={token} />
            )}
          </>
        )}
      </Loaded>
    </Doorway>
  )
}

function AcceptAs({ token, name }: { token: string; name: string }) {
  const router = useRouter()
  const accept = useAcceptInvitation(token)
  return (
    <>
      <FormProblem error={accept.error} />
      <Button
        variant="filled"
        isBusy={accept.isPending}
        onClick={() =>
          accept.mutate(undefined, { onSuccess: ({ roomId }) => router.replace(`/rooms/${roomId}/today`) })
        }
      >
        Join as {name}
      </Button>
    </>
  )
}

function MakeAccount({ token }: { token: string }) {
  const router = useRouter()
  const join = useJoin(token)
  const { draft, change } = useDraft(emptyAccount)
  return (
    <>
      <Form
        submitLabel="Make my account and join"
        isBusy={join.isPending}
        error={join.error}
        onSubmit={() => join.mutate(draft, { onSuccess: ({ roomId }) => router.replace(`/rooms/${roomId}/today`) })}
      >
        <AccountFields account={draft} change={change} />
      </Form>
      <p>
        Already have an account here?{' '}
        <Link href={`/sign-in?next=${encodeURIComponent(`/join/${token}`)}`}>Sign in</Link> and come back to this page.
      </p>
    </>
  )
}
