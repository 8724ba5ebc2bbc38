'use client'

import { type Person, type Role, roles } from '@fryward/shared'
import { roleLabels, sayDate, toPlainDate } from '@fryward/words'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { FormProblem } from '@/base/forms/Form.tsx'
import { SelectBox } from '@/base/forms/SelectBox.tsx'
import { useMay, useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { useChangeRole, useRemovePerson } from '@/parts/people/queries.ts'
import { meOptions } from '@/parts/session/me.ts'
import styles from './people.module.css'
import { ResetLink } from './ResetLink.tsx'

/** Somebody of the room: who they are, what they may do, and for an owner what to do about it. */
export function PersonLine({ person }: { person: Person }) {
  const voice = useVoice()
  const room = useRoom()
  const me = useQuery(meOptions()).data
  const mayOwn = useMay('own')
  const changeRole = useChangeRole(room.id)
  const isMe = me?.user.id === person.userId
  const mayOpenAccounts = me?.ownsServer === true && !isMe
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
            isLabelHidden
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
      {mayOpenAccounts && <ResetLink person={person} />}
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
