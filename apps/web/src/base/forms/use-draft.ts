'use client'

import { useState } from 'react'

/** The typed state of a form: one object, changed a part at a time. */
export function useDraft<T extends object>(start: T) {
  const [draft, setDraft] = useState(start)
  const change = (part: Partial<T>) => setDraft((last) => ({ ...last, ...part }))
  return { draft, change, reset: () => setDraft(start) }
}
