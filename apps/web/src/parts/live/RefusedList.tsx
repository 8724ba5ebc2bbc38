'use client'

import { sayDatesIn, sayMoment } from '@fryward/words'
import { useRouter } from 'next/navigation'
import { serverNow } from '@/base/api/server-clock.ts'
import { loadOutbox } from '@/base/outbox/load-outbox.ts'
import { idOf, type Queued } from '@/base/outbox/queued.ts'
import { useVoice } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import styles from './refused-list.module.css'
import { sayCommand } from './say-command.ts'

/** What was sent from this device and refused when its form had gone: why, and the way to mend it or let it go. */
export function RefusedList({ refused }: { refused: readonly Queued[] }) {
  return refused.map((queued) => <Refused key={idOf(queued)} queued={queued} />)
}

function Refused({ queued }: { queued: Queued }) {
  const voice = useVoice()
  const router = useRouter()
  const said = sayCommand(queued)
  const drop = () => void loadOutbox().then(({ outbox }) => outbox.drop(idOf(queued)))
  return (
    <Notice tone="worry" title={`Not booked: ${said.what}`}>
      <p>{sayDatesIn(queued.refusal?.detail ?? '', voice)}</p>
      <p className={styles.typed}>
        {sayMoment(queued.command.madeAt, serverNow(), voice)}
        {said.typed.map((text) => `, “${text}”`)}
      </p>
      <div className={styles.ways}>
        <Button variant="filled" onClick={() => router.push(queued.path)} aria-label={`Open: ${said.what}`}>
          Open
        </Button>
        <Button variant="subtle" onClick={drop} aria-label={`Drop it: ${said.what}`}>
          Drop it
        </Button>
      </div>
    </Notice>
  )
}
