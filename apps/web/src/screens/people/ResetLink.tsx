'use client'

import type { Person } from '@fryward/shared'
import { FormProblem } from '@/base/forms/Form.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { useCreateResetLink } from '@/parts/people/queries.ts'
import { CopyLink } from './CopyLink.tsx'
import styles from './people.module.css'

/** For somebody who forgot their password: a link to hand on, where mail does not reach them. */
export function ResetLink({ person }: { person: Person }) {
  const create = useCreateResetLink()
  return (
    <div className={styles.reset}>
      {create.data ? (
        <>
          <p>
            Hand this to {person.name} yourself, within the hour. It is good once, and stands on their record and yours.
          </p>
          <CopyLink
            link={new URL(create.data.link, window.location.origin).toString()}
            label={`New password for ${person.name}`}
          />
        </>
      ) : (
        <Button
          variant="subtle"
          isBusy={create.isPending}
          onClick={() => create.mutate(person.userId)}
          aria-label={`Forgot their password? Make a link for ${person.name}`}
        >
          Forgot their password?
        </Button>
      )}
      <FormProblem error={create.error} />
    </div>
  )
}
