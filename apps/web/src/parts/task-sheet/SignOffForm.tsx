'use client'

import type { Task } from '@fryward/shared'
import { useEffect, useRef, useState } from 'react'
import { BegunLine } from '@/base/forms/BegunLine.tsx'
import { FormProblem } from '@/base/forms/Form.tsx'
import { StillWaiting } from '@/base/outbox/StillWaiting.tsx'
import { useMay, useRoom } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { closeTask } from '@/parts/tasks/open-task.ts'
import { AlreadyDone } from './AlreadyDone.tsx'
import { Confirm } from './Confirm.tsx'
import { FieldInput } from './FieldInput.tsx'
import { liveResults } from './live-result.ts'
import { SkipForm } from './SkipForm.tsx'
import styles from './sheet.module.css'
import { toFieldName } from './use-sign-off-answers.ts'
import { useSignOffForm } from './use-sign-off-form.ts'
import { WhenDone } from './WhenDone.tsx'

/** The first box that is wrong, or the first chip of a question that was not answered. */
function focusOnFirst(form: HTMLFormElement | null): void {
  const wrong = form?.querySelector<HTMLElement>('[aria-invalid="true"], [data-invalid]')
  const control = wrong?.matches('fieldset') ? wrong.querySelector('input') : wrong
  control?.focus()
}

/** What was measured, and the one button that books it. Skipping stands beside it, smaller. */
export function SignOffForm({ task, isAgain = false }: { task: Task; isAgain?: boolean }) {
  const room = useRoom()
  const may = useMay('sign_off')
  const form = useSignOffForm({ task, isAgain })
  const [isSkipping, setSkipping] = useState(false)
  const place = useRef<HTMLFormElement>(null)
  const { typed, answers } = form
  const { errors, questions, doneByOther } = answers
  const wrongBefore = useRef(0)
  useEffect(() => {
    // Whoever puts one value right stays in its box, whatever else is wrong.
    const wrong = Object.keys(errors).length
    if (wrong > 0 && wrong >= wrongBefore.current) focusOnFirst(place.current)
    wrongBefore.current = wrong
  }, [errors])
  if (!may) return null
  if (room.myRole === 'stand_in' && !task.isForStandIn)
    return <p className={styles.soft}>This one is for a caretaker: leave it, it stays on the list.</p>
  // Before what is said of the queue: a skip that is on its way stands there too, and its form hears the answer.
  if (isSkipping) return <SkipForm task={task} onCancel={() => setSkipping(false)} />
  if (form.isSentElsewhere) return <Sent />
  if (doneByOther) return <AlreadyDone current={doneByOther} onAgain={form.sendAgain} isBusy={form.isBusy} />
  const live = liveResults(task, typed.drafts, room)
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
      {typed.begunAt && !form.isBusy && <BegunLine at={typed.begunAt} onStartOver={typed.reset} />}
      {task.fields.map((field) => {
        const draft = typed.drafts[field.name]
        return (
          draft && (
            <FieldInput
              key={field.name}
              field={field}
              draft={draft}
              onDraft={(next) => {
                form.takeTyping(field.name, next)
              }}
              error={errors[field.name]}
              lastValues={task.lastValues[field.name] ?? []}
            />
          )
        )
      })}
      <WhenDone value={typed.doneAt} onChange={typed.setDoneAt} />
      {Object.keys(questions).length > 0 ? (
        <Confirm questions={questions} onYes={form.confirm} onNo={answers.goBack} isBusy={form.isBusy} />
      ) : (
        <div className={`${styles.foot} ${styles.book}`}>
          <FormProblem
            error={form.problem}
            labelOf={(path) => task.fields.find(({ name }) => name === toFieldName(path))?.label}
          />
          {Object.keys(errors).length > 0 && (
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
          {form.isBusy && <StillWaiting onGoOn={closeTask} goOnLabel="Go on with the round" />}
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

/** Its values are in the queue. */
function Sent() {
  return (
    <>
      <Notice>
        <p>This is signed off and on its way.</p>
      </Notice>
      <StillWaiting onGoOn={closeTask} goOnLabel="Go on with the round" />
    </>
  )
}
