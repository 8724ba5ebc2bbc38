'use client'

import { TextInput } from '@mantine/core'

type Props = { code: string; onCode: (code: string) => void; hasFocus?: boolean }

/** The second factor of somebody who has one; its recovery codes are letters too, so no keypad of digits. */
export const CodeField = ({ code, onCode, hasFocus = false }: Props) => (
  <TextInput
    label="The code that your authenticator shows"
    description="Without the phone: one of your recovery codes"
    autoComplete="one-time-code"
    autoFocus={hasFocus}
    value={code}
    onChange={(event) => onCode(event.currentTarget.value)}
  />
)
