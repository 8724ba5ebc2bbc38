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
}

/** The system's own picker: it is the one a phone's owner already knows. */
export function SelectBox({ label, value, onChoose, choices, help, error, isRequired = false }: Props) {
  const id = useId()
  return (
    <Input.Wrapper label={label} description={help} error={error} required={isRequired} id={id}>
      <select
        id={id}
        className={styles.select}
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
