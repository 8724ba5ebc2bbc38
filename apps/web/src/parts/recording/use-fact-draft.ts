'use client'

import type { UnitVoice } from '@fryward/words'
import { useEffect, useRef, useState } from 'react'
import { useVoice } from '@/base/room/room-context.tsx'
import type { FactDraft, FieldsProps } from './fact-draft.ts'

/** Keeps the typed texts and hands on, at the start and at each change, what they mean. */
export function useFactDraft<T extends object>(
  start: T,
  onDraft: FieldsProps['onDraft'],
  toDraft: (typed: T, voice: UnitVoice) => FactDraft,
): [T, (part: Partial<T>) => void] {
  const voice = useVoice()
  const [typed, setTyped] = useState(start)
  const atStart = useRef(() => onDraft(toDraft(start, voice)))
  useEffect(() => atStart.current(), [])
  const change = (part: Partial<T>) => {
    const next = { ...typed, ...part }
    setTyped(next)
    onDraft(toDraft(next, voice))
  }
  return [typed, change]
}
