'use client'

import type { Message } from '@fryward/shared'
import { messageStateLabels, messageWayLabels, sayMoment } from '@fryward/words'
import { serverNow } from '@/base/api/server-clock.ts'
import { useVoice } from '@/base/room/room-context.tsx'
import styles from '@/parts/gauges/gauges.module.css'

const occasionLabels = { raised: 'An alarm', over: 'An alarm that is over', trial: 'One to try' } as const

/** Each message: what, to whom, by which way, when, and what became of it; as long as `forgetOldMessages` keeps them. */
export function SentList({ messages }: { messages: Message[] }) {
  if (messages.length === 0) return <p>Nothing was sent in the last 90 days.</p>
  return (
    <ul className={styles.gauges}>
      {messages.map((message) => (
        <SentLine key={message.id} message={message} />
      ))}
    </ul>
  )
}

function SentLine({
  message: { occasion, ordinal, way, personName, to, state, detail, ...times },
}: {
  message: Message
}) {
  const voice = useVoice()
  const when = sayMoment(times.endedAt ?? times.createdAt, serverNow(), voice)
  const again = ordinal > 0 && occasion === 'raised' ? ', again' : ''
  const isLost = state === 'failed' || state === 'unknown'
  return (
    <li>
      <strong>
        {occasionLabels[occasion]}
        {again}
      </strong>{' '}
      · {messageWayLabels[way]} to {personName === null ? to : `${personName} (${to})`}
      <p className={styles.soft}>
        {when}: {isLost ? <strong>{messageStateLabels[state]}</strong> : messageStateLabels[state]}
        {detail !== null && state !== 'sent' && `. ${detail}`}
      </p>
    </li>
  )
}
