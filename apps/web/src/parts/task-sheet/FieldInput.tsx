'use client'

import type { Task, TaskField } from '@fryward/shared'
import { sayNumber, toFieldUnit, toTyped } from '@fryward/words'
import { Textarea } from '@mantine/core'
import { ChoiceChips, ChoicesChips } from '@/base/forms/Chips.tsx'
import { NumberBox } from '@/base/forms/NumberBox.tsx'
import { useVoice } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { CountInput } from './CountInput.tsx'
import type { FieldDraft } from './field-draft.ts'
import { LastValues } from './LastValues.tsx'
import { PartsInput } from './PartsInput.tsx'
import styles from './sheet.module.css'

type Props = {
  field: TaskField
  draft: FieldDraft
  onDraft: (draft: FieldDraft) => void
  error: string | undefined
  lastValues: Task['lastValues'][string]
}

/** One thing to record, with the last values beside it. */
export function FieldInput(props: Props) {
  return (
    <div className={styles.field}>
      <OneInput {...props} />
      <LastValues field={props.field} values={props.lastValues} />
    </div>
  )
}

function OneInput({ field, draft, onDraft, error }: Props) {
  if (field.type === 'count' && draft.kind === 'count')
    return <CountInput field={field} draft={draft} onDraft={onDraft} error={error} />
  if (field.type === 'parts' && draft.kind === 'parts')
    return <PartsInput field={field} draft={draft} onDraft={onDraft} error={error} />
  const common = {
    legend: field.label,
    isRequired: field.isRequired,
    help: field.help,
    ...(error === undefined ? {} : { error }),
  }
  if (field.type === 'choice' && draft.kind === 'text')
    return (
      <ChoiceChips
        {...common}
        choices={field.choices}
        value={draft.text}
        onChoose={(text) => onDraft({ kind: 'text', text })}
      />
    )
  if (field.type === 'choices' && draft.kind === 'choices')
    return (
      <ChoicesChips
        {...common}
        choices={field.choices}
        values={draft.values}
        onChoose={(values) => onDraft({ kind: 'choices', values })}
      />
    )
  if (field.type === 'yes_no' && draft.kind === 'yes_no')
    return (
      <ChoiceChips
        {...common}
        choices={[
          { value: 'yes', label: 'Yes' },
          { value: 'no', label: 'No' },
        ]}
        value={draft.value === undefined ? undefined : draft.value ? 'yes' : 'no'}
        onChoose={(value) => onDraft({ kind: 'yes_no', value: value === 'yes' })}
      />
    )
  if (draft.kind !== 'text') return null
  if (field.type === 'number') return <NumberField field={field} text={draft.text} onDraft={onDraft} error={error} />
  return (
    <Textarea
      label={field.label}
      description={field.help}
      error={error}
      required={field.isRequired}
      value={draft.text}
      onChange={(event) => onDraft({ kind: 'text', text: event.currentTarget.value })}
      rows={2}
    />
  )
}

function NumberField({
  field,
  text,
  onDraft,
  error,
}: {
  field: Extract<TaskField, { type: 'number' }>
  text: string
  onDraft: (draft: FieldDraft) => void
  error: string | undefined
}) {
  const voice = useVoice()
  const usual = field.usual === null ? undefined : toTyped(field.usual, field.unit, voice)
  // Thousands are told apart where they are read; what is typed has none.
  const shown = field.usual === null ? 0 : toFieldUnit(field.unit, voice.units).toShown(field.usual)
  const said = shown >= 10_000 ? sayNumber(shown, voice) : usual
  return (
    <div className={styles.numberRow}>
      <NumberBox
        label={field.label}
        help={field.help}
        unit={field.unit}
        usual={field.usual}
        isRequired={field.isRequired}
        error={error}
        text={text}
        onText={(next) => onDraft({ kind: 'text', text: next })}
        isLarge
      />
      {usual !== undefined && text === '' && (
        <Button
          variant="default"
          onClick={() => onDraft({ kind: 'text', text: usual })}
          aria-label={`As usual: ${said}, for ${field.label}`}
        >
          As usual: {said}
        </Button>
      )}
    </div>
  )
}
