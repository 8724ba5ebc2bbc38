'use client'

import { useEffect, useRef } from 'react'
import { Button } from '@/base/ui/Button.tsx'
import styles from './today.module.css'

type Props = {
  /** What is seen to, by name. */
  names: readonly string[]
  /** "All seen to" of whole stops, "Seen to" of vessels at one. */
  lead: string
  /** The stop that they are vessels of; none where they are stops themselves. */
  at?: string
  /** Where the first of them stands once they are shown. */
  firstId: string | undefined
  isUnfolded: boolean
  onUnfold: (isUnfolded: boolean) => void
}

/** "All seen to: microalgae, larvae." One quiet line for what needs nobody; it opens in its own place. */
export function SeenTo({ names, lead, at, firstId, isUnfolded, onUnfold }: Props) {
  const wasUnfolded = useRef(false)
  // They open above this line: bring the first of them to the eye.
  useEffect(() => {
    if (isUnfolded && !wasUnfolded.current && firstId)
      document.getElementById(firstId)?.scrollIntoView({ block: 'center' })
    wasUnfolded.current = isUnfolded
  }, [isUnfolded, firstId])
  if (names.length === 0) return null
  const what = at === undefined ? 'what is seen to' : `what is seen to at ${at}`
  return (
    <div className={styles.seenTo} data-inside={at !== undefined || undefined}>
      <p>
        {lead}: {names.join(', ')}
      </p>
      <Button
        variant="subtle"
        aria-expanded={isUnfolded}
        aria-label={isUnfolded ? `Fold ${what}` : `Show ${what}`}
        onClick={() => onUnfold(!isUnfolded)}
      >
        {isUnfolded ? 'Fold' : 'Show'}
      </Button>
    </div>
  )
}
