'use client'

import { type CreatedInvitation, type Invitation, type Role, roles } from '@fryward/shared'
import { roleLabels, roleSentences, sayDate, toPlainDate } from '@fryward/words'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { ChoiceChips } from '@/base/forms/Chips.tsx'
import { Form } from '@/base/forms/Form.tsx'
import { useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { Card, Section } from '@/base/ui/Page.tsx'
import { invitationsOptions, useCreateInvitation, useRevokeInvitation } from '@/parts/people/queries.ts'
import { CopyLink } from './CopyLink.tsx'
import styles from './people.module.css'

/** Links that let somebody in, with the role they carry. */
export function Invitations() {
  const room = useRoom()
  const invitations = useQuery(invitationsOptions(room.id))
  return (
    <Section title="Invite somebody">
      <NewInvitation />
      <Loaded query={invitations} skeleton={<Bones heights={[4]} />} what="The list of invitations">
        {(data) => {
          const open = data.filter((one) => one.acceptedAt === null && one.revokedAt === null)
          return (
            open.length > 0 && (
              <ul className={styles.people} aria-label="Invitations not taken up yet">
                {open.map((one) => (
                  <InvitationLine key={one.id} invitation={one} />
                ))}
              </ul>
            )
          )
        }}
      </Loaded>
    </Section>
  )
}

function NewInvitation() {
  const create = useCreateInvitation(useRoom().id)
  const [role, setRole] = useState<Role>('stand_in')
  return (
    <Card>
      <Form
        submitLabel="Make a link"
        isBusy={create.isPending}
        error={create.error}
        onSubmit={() => create.mutate({ role })}
      >
        <ChoiceChips
          legend="As"
          help={roleSentences[role]}
          choices={roles.map((value) => ({ value, label: roleLabels[value] }))}
          value={role}
          onChoose={(value) => setRole(roles.find((one) => one === value) ?? role)}
        />
      </Form>
      {create.data && <FreshLink invitation={create.data} />}
    </Card>
  )
}

function FreshLink({ invitation }: { invitation: CreatedInvitation }) {
  const link = new URL(invitation.link, window.location.origin).toString()
  return (
    <Notice title="Send this link now: it is shown only once">
      <CopyLink link={link} />
    </Notice>
  )
}

function InvitationLine({ invitation }: { invitation: Invitation }) {
  const voice = useVoice()
  const room = useRoom()
  const revoke = useRevokeInvitation(room.id)
  const say = (at: string) => sayDate(toPlainDate(at, room.timeZone), voice)
  return (
    <li className={styles.person}>
      <span>
        <strong>{roleLabels[invitation.role]}</strong>
        <span className={styles.soft}>
          {' '}
          made {say(invitation.createdAt)} by {invitation.createdByName}, works until {say(invitation.expiresAt)}
        </span>
      </span>
      <Button
        variant="subtle"
        isBusy={revoke.isPending}
        onClick={() => revoke.mutate(invitation.id)}
        aria-label={`Withdraw the ${roleLabels[invitation.role].toLowerCase()} invitation`}
      >
        Withdraw
      </Button>
    </li>
  )
}
