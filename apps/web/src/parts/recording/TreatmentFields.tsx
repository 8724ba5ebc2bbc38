'use client'

import { TextInput } from '@mantine/core'
import { filled } from '@/base/forms/filled.ts'
import type { FactDraft, FieldsProps } from './fact-draft.ts'
import { useFactDraft } from './use-fact-draft.ts'

type Typed = { product: string; dose: string; prescribedBy: string; note: string }

function toDraft(typed: Typed): FactDraft {
  const { product, dose, prescribedBy, note } = typed
  if ([product, dose, prescribedBy].some((text) => text.trim() === ''))
    return 'The product, the dose as written, and who prescribed it.'
  return { kind: 'treatment', data: filled({ product, dose, prescribedBy, note: note.trim() }) }
}

/** A treatment as it was prescribed, word for word; nothing is suggested here. */
export function TreatmentFields({ onDraft }: FieldsProps) {
  const [typed, change] = useFactDraft<Typed>({ product: '', dose: '', prescribedBy: '', note: '' }, onDraft, toDraft)
  const box = (name: keyof Typed, label: string, description?: string) => (
    <TextInput
      label={label}
      description={description}
      value={typed[name]}
      onChange={(event) => change({ [name]: event.currentTarget.value })}
    />
  )
  return (
    <>
      {box('product', 'Product', 'As it is written')}
      {box('dose', 'Dose', 'As it is written; ask a veterinarian')}
      {box('prescribedBy', 'Prescribed by')}
      {box('note', 'Note')}
    </>
  )
}
