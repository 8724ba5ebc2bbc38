'use client'

import type { SecondFactor as Begun } from '@fryward/shared'
import { PasswordInput, TextInput } from '@mantine/core'
import { useState } from 'react'
import { Form } from '@/base/forms/Form.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { Card } from '@/base/ui/Page.tsx'
import { useToast } from '@/base/ui/toast.tsx'
import { useBeginSecondFactor, useConfirmSecondFactor, useEndSecondFactor } from '@/parts/account/queries.ts'
import styles from './account.module.css'
import { QrCode } from './QrCode.tsx'

/** A code from an authenticator beside the password: set up, confirmed by a first code, ended. */
export function SecondFactor({ isOn }: { isOn: boolean }) {
  const begin = useBeginSecondFactor()
  const end = useEndSecondFactor()
  const toast = useToast()
  if (isOn)
    return (
      <Card>
        <p>On: whoever signs in as you types a code from your authenticator too.</p>
        <WithPassword
          submitLabel="End the second factor"
          isBusy={end.isPending}
          error={end.error}
          onSubmit={(password) => end.mutate(password, { onSuccess: () => toast({ text: 'Ended.' }) })}
        />
      </Card>
    )
  return (
    <Card>
      {begin.data ? (
        <Confirm begun={begin.data} />
      ) : (
        <>
          <p>
            Off. With it, signing in asks for a code that an authenticator on your phone shows: a password that somebody
            finds out opens nothing by itself.
          </p>
          <WithPassword
            submitLabel="Set up a second factor"
            isBusy={begin.isPending}
            error={begin.error}
            onSubmit={(password) => begin.mutate(password)}
          />
        </>
      )}
    </Card>
  )
}

type WithPasswordProps = {
  submitLabel: string
  isBusy: boolean
  error: unknown
  onSubmit: (password: string) => void
}

function WithPassword({ onSubmit, ...form }: WithPasswordProps) {
  const [password, setPassword] = useState('')
  return (
    <Form {...form} onSubmit={() => onSubmit(password)}>
      <PasswordInput
        label="Your password"
        autoComplete="current-password"
        visibilityToggleButtonProps={{ 'aria-label': 'Show or hide your password' }}
        value={password}
        onChange={(event) => setPassword(event.currentTarget.value)}
      />
    </Form>
  )
}

function Confirm({ begun }: { begun: Begun }) {
  const confirm = useConfirmSecondFactor()
  const toast = useToast()
  const [code, setCode] = useState('')
  return (
    <>
      <p>
        Scan this with an authenticator, or on this phone{' '}
        <a className={styles.link} href={begun.uri}>
          open it in one
        </a>
        .
      </p>
      <QrCode text={begun.uri} label="The picture that an authenticator scans" />
      <Notice title="Write these down now: they are shown only once">
        <p>Each opens the door once, on the day on which the phone is lost.</p>
        <ul className={styles.codes} aria-label="Recovery codes">
          {begun.recoveryCodes.map((each) => (
            <li key={each}>{each}</li>
          ))}
        </ul>
      </Notice>
      <Form
        submitLabel="Confirm"
        isBusy={confirm.isPending}
        error={confirm.error}
        onSubmit={() => confirm.mutate(code, { onSuccess: () => toast({ text: 'The second factor is on.' }) })}
      >
        <TextInput
          label="The code that it shows"
          inputMode="numeric"
          autoComplete="one-time-code"
          value={code}
          onChange={(event) => setCode(event.currentTarget.value)}
        />
      </Form>
    </>
  )
}
