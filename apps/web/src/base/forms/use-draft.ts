'use client'

import { useEffect, useRef, useState } from 'react'
import { dropDraft, findDraft, keepDraft, readDrafts } from '@/base/outbox/drafts.ts'
import { useQueue } from '@/base/outbox/queue-state.ts'
import { useDraftKey } from '@/base/outbox/use-draft-key.ts'
import { hasShapeOf } from './has-shape-of.ts'

type Kept<T> = { draft: T; keptAt: string }

function findKept<T extends object>(key: string | undefined, start: T): Kept<T> | undefined {
  const kept = key === undefined ? undefined : findDraft(key)
  return kept && hasShapeOf(start, kept.value) ? { draft: kept.value, keptAt: kept.keptAt } : undefined
}

/**
 * The typed state of a form: one object, changed a part at a time.
 * @param what the form's place among the drafts of this person and room ("tank/…"). What is typed is then on the device
 * at once, and comes back when the form does, until it is sent or dropped. Left out, it lives as long as the form.
 */
export function useDraft<T extends object>(start: T, what?: string) {
  const draftKey = useDraftKey(what)
  const [kept, setKept] = useState(() => findKept(draftKey, start))
  const [draft, setDraft] = useState(kept?.draft ?? start)
  const latest = useRef(draft)
  const isTouched = useRef(false)
  const show = (next: T) => {
    latest.current = next
    setDraft(next)
  }
  const restore = useRef((key: string | undefined) => {
    const found = isTouched.current ? undefined : findKept(key, start)
    if (!found) return
    setKept(found)
    show(found.draft)
  })
  const { refused } = useQueue()
  useEffect(() => {
    // What was sent from here and refused comes back too.
    if (draftKey !== undefined || refused.length > 0) void readDrafts().then(() => restore.current(draftKey))
  }, [draftKey, refused])
  const drop = () => {
    if (draftKey !== undefined) dropDraft(draftKey)
    setKept(undefined)
  }
  return {
    draft,
    draftKey,
    /** When what stands here was typed, where it was begun before this form opened. */
    begunAt: kept?.keptAt,
    change: (part: Partial<T>) => {
      isTouched.current = true
      show({ ...latest.current, ...part })
      if (draftKey !== undefined) keepDraft(draftKey, latest.current)
    },
    reset: () => {
      drop()
      show(start)
    },
    drop,
  }
}
