'use client'

import { roles } from '@fryward/shared'
import { roleLabels, roleSentences } from '@fryward/words'
import { useQuery } from '@tanstack/react-query'
import { useMay, useRoom } from '@/base/room/room-context.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { Page, Section } from '@/base/ui/Page.tsx'
import { SignInAgain } from '@/parts/again/SignInAgain.tsx'
import { peopleOptions } from '@/parts/people/queries.ts'
import things from '@/parts/things/things.module.css'
import { Invitations } from './Invitations.tsx'
import { PersonLine } from './PersonLine.tsx'
import styles from './people.module.css'
import { WhoResets } from './WhoResets.tsx'

export function PeoplePage() {
  const room = useRoom()
  const people = useQuery(peopleOptions(room.id))
  const mayOwn = useMay('own')
  return (
    <div className={things.wide}>
      <Page title="People" lead={`Who looks after ${room.name}`}>
        <Loaded query={people} skeleton={<Bones heights={[5, 5, 5]} />} what="The list of people">
          {(data) => (
            <ul className={styles.people}>
              {data.map((person) => (
                <PersonLine key={person.userId} person={person} />
              ))}
            </ul>
          )}
        </Loaded>
        {mayOwn ? (
          <>
            <WhoResets />
            <Invitations />
          </>
        ) : (
          <Section title="What each may do">
            <ul className={styles.roles}>
              {roles.map((role) => (
                <li key={role}>
                  <strong>{roleLabels[role]}:</strong> {roleSentences[role]}
                </li>
              ))}
            </ul>
          </Section>
        )}
        <SignInAgain />
      </Page>
    </div>
  )
}
