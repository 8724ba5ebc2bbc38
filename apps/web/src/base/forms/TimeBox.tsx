'use client'

import { parseTime } from '@fryward/words'

import { TextInput } from '@mantine/core'
import { useState } from 'react'
import styles from './forms.module.css'

type Props = {
  label: string
  /** As typed; `parseTime` reads it. */
  text: string
  onText: (text: string) => void
  isRequired?: boolean
  /** The label is said, not shown: a heading above says it for those who see. */
  isLabelHidden?: boolean
  error?: string | undefined
}

export const notATime = 'A time of day, such as 7:30 or 19:30.'

/**
 * A time of day on the 24 hours that everything else here is said in, whatever the device's own habit; typed on the
 * number pad, tidied up to HH:MM on leaving.
 */
export function TimeBox({ label, text, onText, isRequired = false, isLabelHidden = false, error }: Props) {
  const [isLeft, setLeft] = useState(false)
  const isWrong = isLeft && (text.trim() === '' ? isRequired : parseTime(text) === undefined)
  return (
    <TextInput
      {...(isLabelHidden ? { 'aria-label': label } : { label })}
      required={isRequired}
      inputMode="numeric"
      autoComplete="off"
      placeholder="HH:MM"
      maxLength={8}
      classNames={{ input: styles.numberInput }}
      value={text}
      error={error ?? (isWrong ? notATime : undefined)}
      onChange={(event) => {
        setLeft(false)
        onText(event.currentTarget.value)
      }}
      onBlur={() => {
        setLeft(true)
        const time = parseTime(text)
        if (time !== undefined && time !== text) onText(time)
      }}
    />
  )
}
