'use client'

import { useEffect, useRef, useState } from 'react'
import type { FactDraft, FieldsProps } from './fact-draft.ts'

/** Keeps the typed texts and hands on, at the start and at each change, what they mean. */
export function useFactDraft<T extends object>(
  start: T,
  onDraft: FieldsProps['onDraft'],
  toDraft: (typed: T) => FactDraft,
): [T, (part: Partial<T>) => void] {
  const [typed, setTyped] = useState(start)
  const atStart = useRef(() => onDraft(toDraft(start)))
  useEffect(() => atStart.current(), [])
  const change = (part: Partial<T>) => {
    const next = { ...typed, ...part }
    setTyped(next)
    onDraft(toDraft(next))
  }
  return [typed, change]
}
