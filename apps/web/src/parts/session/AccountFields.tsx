'use client'

import { PasswordSchema } from '@fryward/shared'
import { PasswordInput, TextInput } from '@mantine/core'

export type Account = { name: string; email: string; password: string }
export const emptyAccount: Account = { name: '', email: '', password: '' }

/** Name, email and a new password. */
export function AccountFields({ account, change }: { account: Account; change: (part: Partial<Account>) => void }) {
  return (
    <>
      <TextInput
        label="Your name"
        description="It stands beside what you do"
        autoComplete="name"
        required
        value={account.name}
        onChange={(event) => change({ name: event.currentTarget.value })}
      />
      <TextInput
        label="Email"
        type="email"
        autoComplete="username"
        inputMode="email"
        required
        value={account.email}
        onChange={(event) => change({ email: event.currentTarget.value })}
      />
      <NewPasswordInput label="Password" value={account.password} onChange={(password) => change({ password })} />
    </>
  )
}

type PasswordProps = { label: string; value: string; onChange: (value: string) => void }

/** A password that is chosen, and says when it is too short. */
export function NewPasswordInput({ label, value, onChange }: PasswordProps) {
  const isShort = value !== '' && !PasswordSchema.safeParse(value).success
  return (
    <PasswordInput
      label={label}
      description={isShort ? 'At least 10 characters: a few more' : 'At least 10 characters'}
      autoComplete="new-password"
      required
      visibilityToggleButtonProps={{ 'aria-label': 'Show or hide the password' }}
      value={value}
      onChange={(event) => onChange(event.currentTarget.value)}
    />
  )
}
