'use client'

import { useId } from 'react'
import styles from './forms.module.css'

type Choice = { value: string; label: string }
type Common = { legend: string; choices: readonly Choice[]; isRequired?: boolean; help?: string | null; error?: string }

/** One of a few, as large chips. */
export function ChoiceChips(props: Common & { value: string | undefined; onChoose: (value: string) => void }) {
  const name = useId()
  return (
    <ChipSet {...props}>
      {props.choices.map((choice) => (
        <label key={choice.value} className={styles.chip}>
          <input
            type="radio"
            name={name}
            checked={props.value === choice.value}
            onChange={() => props.onChoose(choice.value)}
          />
          <span>{choice.label}</span>
        </label>
      ))}
    </ChipSet>
  )
}

/** Any of a few, as large chips. */
export function ChoicesChips(props: Common & { values: readonly string[]; onChoose: (values: string[]) => void }) {
  const toggle = (value: string) =>
    props.onChoose(
      props.values.includes(value) ? props.values.filter((one) => one !== value) : [...props.values, value],
    )
  return (
    <ChipSet {...props}>
      {props.choices.map((choice) => (
        <label key={choice.value} className={styles.chip}>
          <input type="checkbox" checked={props.values.includes(choice.value)} onChange={() => toggle(choice.value)} />
          <span>{choice.label}</span>
        </label>
      ))}
    </ChipSet>
  )
}

function ChipSet({ legend, help, error, isRequired, children }: Common & { children: React.ReactNode }) {
  const noteId = useId()
  return (
    <fieldset
      className={styles.chipSet}
      aria-describedby={error || help ? noteId : undefined}
      data-invalid={error ? true : undefined}
    >
      <legend className={styles.legend}>
        {legend}
        {isRequired && <span aria-hidden="true"> *</span>}
      </legend>
      {(error || help) && (
        <p id={noteId} className={error ? styles.error : styles.help}>
          {error ?? help}
        </p>
      )}
      <div className={styles.chips}>{children}</div>
    </fieldset>
  )
}
