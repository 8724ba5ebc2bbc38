'use client'

import { useQuery } from '@tanstack/react-query'
import { Bones } from '@/base/ui/Bones.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { Page, Section } from '@/base/ui/Page.tsx'
import { allSignInsOptions, mySignInsOptions } from '@/parts/account/queries.ts'
import { meOptions } from '@/parts/session/me.ts'
import { LeaveRoom } from './LeaveRoom.tsx'
import { PasswordForm } from './PasswordForm.tsx'
import { SecondFactor } from './SecondFactor.tsx'
import { Sessions } from './Sessions.tsx'
import { SignIns } from './SignIns.tsx'

/** What somebody can do about their own way in: password, second factor, where they are signed in, who tried. */
export function AccountPage() {
  const me = useQuery(meOptions())
  return (
    <Loaded query={me} skeleton={<Bones heights={[8, 8, 8]} />} what="Your account">
      {({ user, ownsServer }) => (
        <Page title="Your account" lead={`${user.name}, ${user.email}`}>
          <Section title="Password">
            <PasswordForm />
          </Section>
          <Section title="Second factor">
            <SecondFactor isOn={user.hasSecondFactor} />
          </Section>
          <Sessions />
          <Section title="Tries to sign in as you">
            <SignIns options={mySignInsOptions()} />
          </Section>
          {ownsServer && (
            <Section title="Tries to sign in to this server">
              <SignIns options={allSignInsOptions()} />
            </Section>
          )}
          <LeaveRoom />
        </Page>
      )}
    </Loaded>
  )
}
