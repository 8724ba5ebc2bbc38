'use client'

import type { UnitVoice } from '@fryward/words'
import { createContext, useContext, useEffect, useState } from 'react'
import { hasShapeOf } from '@/base/forms/has-shape-of.ts'
import { useVoice } from '@/base/room/room-context.tsx'
import type { FactDraft, FieldsProps } from './fact-draft.ts'

/** What is typed into the fields of a fact, kept with the rest of its form. */
export type TypedFields = { fields: object | undefined; keep: (fields: object) => void }

const TypedFieldsContext = createContext<TypedFields | null>(null)

export const TypedFieldsProvider = TypedFieldsContext

/** The typed texts of a fact's fields, and hands on what they mean whenever that is something else. */
export function useFactDraft<T extends object>(
  start: T,
  onDraft: FieldsProps['onDraft'],
  toDraft: (typed: T, voice: UnitVoice) => FactDraft,
): [T, (part: Partial<T>) => void] {
  const voice = useVoice()
  const kept = useContext(TypedFieldsContext)
  if (kept === null) throw new Error('useFactDraft is for the fields of a RecordForm')
  const [begin] = useState(start)
  const typed = hasShapeOf(begin, kept.fields) ? kept.fields : begin
  // As text, so that the same meaning worked out again is the same.
  const meaning = JSON.stringify(toDraft(typed, voice))
  useEffect(() => onDraft(JSON.parse(meaning) as FactDraft), [meaning, onDraft])
  return [typed, (part) => kept.keep({ ...typed, ...part })]
}
