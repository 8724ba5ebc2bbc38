'use client'

import { TextInput } from '@mantine/core'
import { useState } from 'react'
import { toInstant, toLocalText } from '@/dates/local-time.ts'
import { useRoom } from '@/features/rooms/room-context.tsx'

type Props = {
  label: string
  /** Instant, or undefined for now. */
  value: string | undefined
  onChange: (at: string | undefined) => void
  isRequired?: boolean
  error?: string | undefined
}

/** A moment in the room's own time zone, whatever zone this device is in. */
export function DateTimeBox({ label, value, onChange, isRequired = false, error }: Props) {
  const { timeZone } = useRoom()
  const [text, setText] = useState(() => (value ? toLocalText(value, timeZone) : ''))
  return (
    <TextInput
      type="datetime-local"
      label={label}
      description={`Room time, ${timeZone}`}
      required={isRequired}
      value={text}
      error={error}
      onChange={(event) => {
        setText(event.currentTarget.value)
        onChange(toInstant(event.currentTarget.value, timeZone))
      }}
    />
  )
}
