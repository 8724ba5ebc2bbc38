'use client'

import { parseTime } from '@fryward/words'

import { TextInput } from '@mantine/core'
import { useState } from 'react'
import { toInstant, toLocalText } from '@/base/dates/local-time.ts'
import { useRoom } from '@/base/room/room-context.tsx'
import styles from './forms.module.css'
import { TimeBox } from './TimeBox.tsx'

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
  const [typed, setTyped] = useState(() => {
    const [date = '', time = ''] = value ? toLocalText(value, timeZone).split('T') : []
    return { date, time }
  })
  const change = (part: Partial<typeof typed>) => {
    const next = { ...typed, ...part }
    setTyped(next)
    const time = parseTime(next.time)
    onChange(time === undefined ? undefined : toInstant(`${next.date}T${time}`, timeZone))
  }
  return (
    <fieldset className={styles.chipSet}>
      <legend className={styles.legend}>{label}</legend>
      <p className={error ? styles.error : styles.help} role={error ? 'alert' : undefined}>
        {error ?? `Room time, ${timeZone}`}
      </p>
      <div className={styles.moment}>
        <TextInput
          type="date"
          label="Date"
          required={isRequired}
          value={typed.date}
          onChange={(event) => change({ date: event.currentTarget.value })}
        />
        <TimeBox label="Time" isRequired={isRequired} text={typed.time} onText={(time) => change({ time })} />
      </div>
    </fieldset>
  )
}
