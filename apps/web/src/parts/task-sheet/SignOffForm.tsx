'use client'

import type { Task } from '@fryward/shared'
import { useEffect, useRef, useState } from 'react'
import { FormProblem } from '@/base/forms/Form.tsx'
import { useMay, useRoom } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { AlreadyDone } from './AlreadyDone.tsx'
import { Confirm } from './Confirm.tsx'
import { FieldInput } from './FieldInput.tsx'
import { liveResults } from './live-result.ts'
import { SkipForm } from './SkipForm.tsx'
import styles from './sheet.module.css'
import { useSignOffForm } from './use-sign-off-form.ts'
import { WhenDone } from './WhenDone.tsx'

/** What was measured, and the one button that books it. Skipping stands beside it, smaller. */
export function SignOffForm({ task, isAgain = false }: { task: Task; isAgain?: boolean }) {
  const room = useRoom()
  const may = useMay('sign_off')
  const form = useSignOffForm({ task, isAgain })
  const [isSkipping, setSkipping] = useState(false)
  const place = useRef<HTMLFormElement>(null)
  const { errors } = form
  useEffect(() => {
    if (Object.keys(errors).length > 0) place.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus()
  }, [errors])
  if (!may) return null
  if (room.myRole === 'stand_in' && !task.isForStandIn)
    return <p className={styles.soft}>This one is for a caretaker: leave it, it stays on the list.</p>
  if (form.doneByOther) return <AlreadyDone current={form.doneByOther} onAgain={form.sendAgain} isBusy={form.isBusy} />
  const live = liveResults(task, form.drafts, room)
  if (isSkipping) return <SkipForm task={task} onCancel={() => setSkipping(false)} />
  return (
    <form
      ref={place}
      className={styles.form}
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        form.send()
      }}
    >
      {task.fields.map((field) => {
        const draft = form.drafts[field.name]
        return (
          draft && (
            <FieldInput
              key={field.name}
              field={field}
              draft={draft}
              onDraft={(next) => form.setDraft(field.name, next)}
              error={form.errors[field.name]}
              lastValues={task.lastValues[field.name] ?? []}
            />
          )
        )
      })}
      <WhenDone value={form.doneAt} onChange={form.setDoneAt} />
      {Object.keys(form.questions).length > 0 ? (
        <Confirm questions={form.questions} onYes={form.confirm} onNo={form.goBack} isBusy={form.isBusy} />
      ) : (
        <div className={`${styles.foot} ${styles.book}`}>
          <FormProblem error={form.problem} />
          {Object.keys(form.errors).length > 0 && (
            <p className={styles.worry} role="alert">
              One thing to look at above before this can be booked.
            </p>
          )}
          {live.length > 0 && (
            <div className={styles.makes} aria-live="polite">
              {live.map((line) => (
                <p key={line}>{line}</p>
              ))}
            </div>
          )}
          {form.isWaiting && <StillWaiting onLeave={form.leave} />}
          <div className={styles.bookRow}>
            <Button type="submit" variant="filled" isLarge isBusy={form.isBusy}>
              Done
            </Button>
            {task.state === 'open' && (
              <Button variant="default" isLarge onClick={() => setSkipping(true)}>
                Skip…
              </Button>
            )}
          </div>
        </div>
      )}
    </form>
  )
}

function StillWaiting({ onLeave }: { onLeave: () => void }) {
  return (
    <Notice>
      <p>No answer from the server yet. This goes out by itself when the network is back.</p>
      <Button variant="default" onClick={onLeave}>
        Go on with the round
      </Button>
    </Notice>
  )
}
