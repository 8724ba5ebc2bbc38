'use client'

import { sayDatesIn, sayFieldPath } from '@fryward/words'
import { type FormEvent, type ReactNode, useState } from 'react'
import { isApiProblem, sentenceOf } from '@/base/api/problem.ts'
import { useQueue } from '@/base/outbox/queue-state.ts'
import { StillWaiting } from '@/base/outbox/StillWaiting.tsx'
import { useVoice } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { useIsHydrated } from '@/base/ui/use-is-hydrated.ts'
import { BegunLine } from './BegunLine.tsx'
import styles from './forms.module.css'

type Props = {
  submitLabel: string
  isBusy: boolean
  error?: unknown
  onSubmit: () => void
  onCancel?: (() => void) | undefined
  /** Where the form is to go while what was sent waits for the network; without it, as when cancelled. */
  onGoOn?: () => void
  /** What useDraft gave: says what was begun earlier, and is dropped with the form. */
  typed?: { begunAt: string | undefined; reset: () => void; drop: () => void }
  children: ReactNode
}

/**
 * Fields in one column, what went wrong above the buttons, one main action. Until the page's script is here nothing takes
 * typing: what is typed into a form that came as plain HTML is lost when the script takes it over.
 */
export function Form({ submitLabel, isBusy, error, onSubmit, onCancel, onGoOn = onCancel, typed, children }: Props) {
  const isHydrated = useIsHydrated()
  const isStuck = useQueue().stuck !== null && isBusy
  // What was said of a value is of no use once it is another one.
  const [outdated, setOutdated] = useState<unknown>()
  const cancel = () => {
    typed?.drop()
    onCancel?.()
  }
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault()
    if (!isBusy && !showUnread(event.currentTarget)) onSubmit()
  }
  return (
    <form onSubmit={submit} noValidate>
      <fieldset className={styles.fields} disabled={!isHydrated} onChange={() => setOutdated(error)}>
        {typed?.begunAt && !isBusy && <BegunLine at={typed.begunAt} onStartOver={typed.reset} />}
        {children}
        <FormProblem error={error === outdated ? undefined : error} />
        {isStuck && <StillWaiting onGoOn={onGoOn} />}
        <div className={styles.buttons}>
          <Button type="submit" variant="filled" isBusy={isBusy}>
            {submitLabel}
          </Button>
          {onCancel && !isStuck && (
            <Button variant="subtle" onClick={cancel}>
              Cancel
            </Button>
          )}
        </div>
      </fieldset>
    </form>
  )
}

/** A number that cannot be read is not left out in silence: its box says so, and the form stays. */
function showUnread(form: HTMLFormElement): boolean {
  const box = form.querySelector<HTMLElement>('[data-unread]')
  // Leaving the box makes it say what is wrong with it.
  box?.focus()
  box?.blur()
  box?.focus()
  return box !== null
}

type ProblemProps = {
  error: unknown
  /** What the form calls its fields, by the path that the API names; others go by their path. */
  labelOf?: (path: string) => string | undefined
}

/** The API's own sentence, with each field it names; a question asked back stands in the sentence already. */
export function FormProblem({ error, labelOf }: ProblemProps) {
  const voice = useVoice()
  if (!error) return null
  const fields = isApiProblem(error) && error.code !== 'needs_confirmation' ? error.fields : []
  return (
    <Notice tone="worry" title={sayDatesIn(sentenceOf(error), voice)}>
      {fields.length > 0 && (
        <ul className={styles.problems}>
          {fields.map((field) => (
            <li key={`${field.path} ${field.message}`}>
              {headOf(field.path, labelOf?.(field.path))}
              {sayDatesIn(field.message, voice)}
            </li>
          ))}
        </ul>
      )}
    </Notice>
  )
}

/** A label may be a question, behind which no colon can stand. */
function headOf(path: string, label: string | undefined): string {
  if (label !== undefined) return `${label} · `
  return path && `${sayFieldPath(path)}: `
}
