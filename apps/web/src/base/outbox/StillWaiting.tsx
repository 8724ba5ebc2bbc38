'use client'

import { Button, LinkButton } from '@/base/ui/Button.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { useQueue } from './queue-state.ts'
import type { Stuck } from './queued.ts'
import { signInHref } from './sign-in-href.ts'

const reasons = {
  network: 'No answer from the server yet. This goes out by itself when the network is back.',
  server: 'The server cannot take this yet. It goes out by itself as soon as it can.',
  signed_out: 'You are signed out. This goes out when you have signed in.',
} as const satisfies Record<Stuck, string>

/** Under a form whose command is kept and not heard of: why, and that nobody has to stay for it. */
export function StillWaiting({
  onGoOn,
  goOnLabel = 'Go on',
}: {
  onGoOn?: (() => void) | undefined
  goOnLabel?: string
}) {
  const { stuck, isLasting } = useQueue()
  if (stuck === null) return null
  return (
    <Notice>
      <p>{reasons[stuck]}</p>
      <p>
        {isLasting
          ? 'Until then it is kept on this device.'
          : 'This browser keeps nothing: leave the page open until then.'}
      </p>
      {stuck === 'signed_out' && (
        <LinkButton href={signInHref()} variant="filled">
          Sign in
        </LinkButton>
      )}
      {onGoOn && (
        <Button variant="default" onClick={onGoOn}>
          {goOnLabel}
        </Button>
      )}
    </Notice>
  )
}
