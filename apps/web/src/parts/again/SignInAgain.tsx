'use client'

import { PasswordInput } from '@mantine/core'
import { useMutation, useQuery } from '@tanstack/react-query'
import { useEffect, useId, useRef, useState } from 'react'
import { call } from '@/base/api/call.ts'
import { Form } from '@/base/forms/Form.tsx'
import { CodeField } from '@/parts/session/CodeField.tsx'
import { meOptions } from '@/parts/session/me.ts'
import styles from './again.module.css'
import { giveUpWaiting, useWaiting } from './sign-in-again.ts'

/** Asks whoever means something that matters for their password, over the page on which they meant it. */
export function SignInAgain() {
  const waiting = useWaiting()
  // Whoever leaves the page has left what they meant on it: no other page asks for it.
  useEffect(() => giveUpWaiting, [])
  return waiting && <Dialog {...waiting} />
}

function Dialog({ goOn, giveUp }: { goOn: () => void; giveUp: () => void }) {
  const me = useQuery(meOptions()).data
  const asksCode = me?.user.hasSecondFactor === true
  const again = useMutation({
    mutationFn: () => call('signInAgain', { body: { password, ...(asksCode ? { code } : {}) } }),
  })
  const [password, setPassword] = useState('')
  const [code, setCode] = useState('')
  const dialog = useRef<HTMLDialogElement>(null)
  const titleId = useId()
  useEffect(() => dialog.current?.showModal(), [])
  return (
    <dialog ref={dialog} className={styles.dialog} onClose={giveUp} aria-labelledby={titleId}>
      <h2 id={titleId}>Is it you{me ? `, ${me.user.name}` : ''}?</h2>
      <p>This matters, so type your password once more. Then it is done as you meant it.</p>
      <Form
        submitLabel="Go on"
        isBusy={again.isPending}
        error={again.error}
        onSubmit={() => again.mutate(undefined, { onSuccess: goOn })}
        onCancel={giveUp}
      >
        <PasswordInput
          label="Your password"
          autoComplete="current-password"
          autoFocus
          visibilityToggleButtonProps={{ 'aria-label': 'Show or hide your password' }}
          value={password}
          onChange={(event) => setPassword(event.currentTarget.value)}
        />
        {asksCode && <CodeField code={code} onCode={setCode} />}
      </Form>
    </dialog>
  )
}
