'use client'

import { harvestDestinations, type TaskField } from '@fryward/shared'
import { useState } from 'react'
import { NumberBox } from '@/base/forms/NumberBox.tsx'
import { SelectBox } from '@/base/forms/SelectBox.tsx'
import { useDestinations } from '@/parts/things/use-destinations.ts'
import type { PartDraft } from './field-draft.ts'
import styles from './sheet.module.css'

type PartsDraft = { kind: 'parts'; parts: PartDraft[] }
type Props = {
  field: Extract<TaskField, { type: 'parts' }>
  draft: PartsDraft
  onDraft: (draft: PartsDraft) => void
  error: string | undefined
}

/** Where each litre went: the suggested destinations, and any other of the room. */
export function PartsInput({ field, draft, onDraft, error }: Props) {
  const setParts = (parts: PartDraft[]) => onDraft({ kind: 'parts', parts })
  return (
    <fieldset className={styles.count}>
      <legend className={styles.legend}>
        {field.label}
        {field.isRequired && <span aria-hidden="true"> *</span>}
      </legend>
      {field.help && <p className={styles.soft}>{field.help}</p>}
      {draft.parts.map((part) => (
        <NumberBox
          key={part.id}
          label={`To ${part.name}`}
          unit="L"
          text={part.litres}
          isLarge
          onText={(litres) => setParts(draft.parts.map((one) => (one.id === part.id ? { ...one, litres } : one)))}
        />
      ))}
      <AddDestination draft={draft} setParts={setParts} />
      {error && <p className={styles.worry}>{error}</p>}
    </fieldset>
  )
}

function AddDestination({ draft, setParts }: { draft: PartsDraft; setParts: (parts: PartDraft[]) => void }) {
  const destinations = useDestinations()
  const [key, setKey] = useState('')
  const isTaken = (one: (typeof destinations)[number]) =>
    draft.parts.some((part) => part.to === one.to && part.subjectId === one.subjectId)
  const free = destinations.filter((one) => !isTaken(one) && harvestDestinations.includes(one.to))
  if (free.length === 0) return null
  const add = (chosen: string) => {
    const found = free.find((one) => one.key === chosen)
    setKey('')
    if (!found) return
    const id = Math.max(0, ...draft.parts.map((part) => part.id)) + 1
    setParts([...draft.parts, { id, to: found.to, subjectId: found.subjectId, name: found.name, litres: '' }])
  }
  return (
    <SelectBox
      label="Also to"
      value={key}
      onChoose={add}
      choices={[{ value: '', label: 'choose' }, ...free.map((one) => ({ value: one.key, label: one.name }))]}
    />
  )
}
