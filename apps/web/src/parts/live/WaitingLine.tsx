'use client'

import type { Id } from '@fryward/shared'
import { useEffect } from 'react'
import styles from './connection-line.module.css'
import { useWaiting } from './waiting.ts'

/** "2 waiting for network": what was signed off and not yet heard. Leaving the page then is asked about. */
export function WaitingLine({ roomId }: { roomId: Id }) {
  const count = useWaiting(roomId).length
  const isWaiting = count > 0
  useEffect(() => {
    if (!isWaiting) return
    const ask = (event: BeforeUnloadEvent) => event.preventDefault()
    window.addEventListener('beforeunload', ask)
    document.documentElement.dataset.waiting = ''
    return () => {
      window.removeEventListener('beforeunload', ask)
      delete document.documentElement.dataset.waiting
    }
  }, [isWaiting])
  return (
    <div role="status">
      {isWaiting && (
        <p className={styles.waiting}>
          <strong>{count} waiting for network.</strong> Keep this page open; they go out by themselves.
        </p>
      )}
    </div>
  )
}
