'use client'

import { Input } from '@mantine/core'
import { useId } from 'react'
import styles from './forms.module.css'

type Props = {
  label: string
  value: string
  onChoose: (value: string) => void
  choices: readonly { value: string; label: string }[]
  help?: string
  error?: string | undefined
  isRequired?: boolean
  /** Where its place says what it is; it is read out all the same. */
  isLabelHidden?: boolean
}

/** The system's own picker: it is the one a phone's owner already knows. */
export function SelectBox(props: Props) {
  const { label, value, onChoose, choices, help, error, isRequired = false, isLabelHidden = false } = props
  const id = useId()
  return (
    <Input.Wrapper
      label={isLabelHidden ? undefined : label}
      description={help}
      error={error}
      required={isRequired}
      id={id}
    >
      <select
        id={id}
        className={styles.select}
        aria-label={isLabelHidden ? label : undefined}
        value={value}
        required={isRequired}
        onChange={(event) => onChoose(event.currentTarget.value)}
      >
        {choices.map((choice) => (
          <option key={choice.value} value={choice.value}>
            {choice.label}
          </option>
        ))}
      </select>
    </Input.Wrapper>
  )
}
