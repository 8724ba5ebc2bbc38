'use client'

import { useEffect } from 'react'
import { type QueueState, useQueue } from '@/base/outbox/queue-state.ts'
import { signInHref } from '@/base/outbox/sign-in-href.ts'
import { Link } from '@/base/ui/Link.tsx'
import styles from './connection-line.module.css'

/** "2 waiting for network": what was sent off and not yet heard of. It is kept, so the page may be left. */
export function WaitingLine() {
  const queue = useQueue()
  const isWaiting = queue.stuck !== null
  useEffect(() => {
    document.documentElement.toggleAttribute('data-waiting', isWaiting)
    return () => document.documentElement.removeAttribute('data-waiting')
  }, [isWaiting])
  // Only a browser that keeps nothing has something to lose.
  const wouldLose = isWaiting && !queue.isLasting
  useEffect(() => {
    if (!wouldLose) return
    const ask = (event: BeforeUnloadEvent) => event.preventDefault()
    window.addEventListener('beforeunload', ask)
    return () => window.removeEventListener('beforeunload', ask)
  }, [wouldLose])
  return (
    <div role="status" aria-label="What waits on this device">
      {isWaiting && (
        <p className={styles.waiting}>
          <Said {...queue} />
        </p>
      )}
    </div>
  )
}

function Said({ waiting, stuck, isLasting }: QueueState) {
  const count = waiting.length
  if (stuck === 'signed_out')
    return (
      <>
        <strong>{count} waiting for you to sign in.</strong> <Link href={signInHref()}>Sign in</Link>
      </>
    )
  return (
    <>
      <strong>
        {count} waiting for {stuck}.
      </strong>{' '}
      {isLasting
        ? 'Kept on this device; they go out by themselves.'
        : 'Keep this page open; they go out by themselves.'}
    </>
  )
}
