'use client'

import { type Person, type Role, roles } from '@fryward/shared'
import { roleLabels, roleSentences, sayDate, toPlainDate } from '@fryward/words'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { FormProblem } from '@/base/forms/Form.tsx'
import { SelectBox } from '@/base/forms/SelectBox.tsx'
import { useMay, useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { Page, Section } from '@/base/ui/Page.tsx'
import { SignInAgain } from '@/parts/again/SignInAgain.tsx'
import { peopleOptions, useChangeRole, useRemovePerson } from '@/parts/people/queries.ts'
import { meOptions } from '@/parts/session/me.ts'
import { Invitations } from './Invitations.tsx'
import styles from './people.module.css'

export function PeoplePage() {
  const room = useRoom()
  const people = useQuery(peopleOptions(room.id))
  const mayOwn = useMay('own')
  return (
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
        <Invitations />
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
  )
}

function PersonLine({ person }: { person: Person }) {
  const voice = useVoice()
  const room = useRoom()
  const me = useQuery(meOptions()).data
  const mayOwn = useMay('own')
  const changeRole = useChangeRole(room.id)
  const isMe = me?.user.id === person.userId
  return (
    <li className={styles.person}>
      <div>
        <strong>{person.name}</strong>
        {isMe && ' (you)'}
        <p className={styles.soft}>
          {person.email} · here since {sayDate(toPlainDate(person.joinedAt, room.timeZone), voice)}
        </p>
        <FormProblem error={changeRole.error} />
      </div>
      {mayOwn && !isMe ? (
        <div className={styles.personActions}>
          <SelectBox
            label={`Role of ${person.name}`}
            value={changeRole.isPending ? changeRole.variables.role : person.role}
            choices={roles.map((value) => ({ value, label: roleLabels[value] }))}
            onChoose={(value) => {
              const role: Role | undefined = roles.find((one) => one === value)
              if (role) changeRole.mutate({ userId: person.userId, role })
            }}
          />
          <RemoveButton person={person} />
        </div>
      ) : (
        <span className={styles.role}>{roleLabels[person.role]}</span>
      )}
    </li>
  )
}

/** Asks once more in place: the second tap is the one that counts. */
function RemoveButton({ person }: { person: Person }) {
  const remove = useRemovePerson(useRoom().id)
  const [isSure, setSure] = useState(false)
  if (!isSure)
    return (
      <Button variant="subtle" onClick={() => setSure(true)} aria-label={`Take out ${person.name}`}>
        Take out
      </Button>
    )
  return (
    <>
      <Button variant="default" isBusy={remove.isPending} onClick={() => remove.mutate(person.userId)}>
        Yes, take {person.name} out
      </Button>
      <Button variant="subtle" onClick={() => setSure(false)}>
        Keep
      </Button>
      <FormProblem error={remove.error} />
    </>
  )
}
