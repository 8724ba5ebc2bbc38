'use client'

import type { Device, Gauge, Id } from '@fryward/shared'
import { sayMoment } from '@fryward/words'
import { useServerNow } from '@/base/dates/use-now.ts'
import { useVoice } from '@/base/room/room-context.tsx'
import { WorrySign } from '@/base/ui/Notice.tsx'
import { sayRead } from '@/parts/gauges/say-read.ts'
import styles from './devices.module.css'
import { isHeard } from './heard.ts'

// More are told when it is opened.
const mostGauges = 4

/** Its name, whether it is heard, and what its gauges read last. */
export function DeviceLine({ device, troubledIds }: { device: Device; troubledIds: ReadonlySet<Id> }) {
  const inUse = device.gauges.filter(({ endedAt }) => endedAt === null)
  const [shown, more] = [inUse.slice(0, mostGauges), inUse.length - mostGauges]
  return (
    <span className={styles.line}>
      <h2 className={styles.name}>{device.name}</h2>
      <Light lastSeenAt={device.lastSeenAt} />
      <span className={styles.values}>
        {shown.map((gauge, index) => (
          <LatestValue
            key={gauge.id}
            gauge={gauge}
            isTroubled={troubledIds.has(gauge.id)}
            isPlaced={shown[index - 1]?.subject.id !== gauge.subject.id}
          />
        ))}
        {more > 0 && <span>and {more} more</span>}
        {inUse.length === 0 && <span>no gauge yet</span>}
      </span>
    </span>
  )
}

/** Filled while it is heard, a ring while it is not: a shape, so that it is told in every light. */
function Light({ lastSeenAt }: Pick<Device, 'lastSeenAt'>) {
  const voice = useVoice()
  const now = useServerNow()
  const heard = lastSeenAt !== null && isHeard(lastSeenAt, now)
  return (
    <span className={styles.seen}>
      <span className={styles.light} data-heard={heard || undefined} aria-hidden="true" />
      {lastSeenAt === null && 'nothing heard yet'}
      {lastSeenAt !== null && `${heard ? 'heard' : 'not heard since'} ${sayMoment(lastSeenAt, now, voice)}`}
    </span>
  )
}

/** Where it hangs is said once of those that hang there. */
function LatestValue({ gauge, isTroubled, isPlaced }: { gauge: Gauge; isTroubled: boolean; isPlaced: boolean }) {
  const { latest, subject, key } = gauge
  const voice = useVoice()
  return (
    <span className={styles.value}>
      {isTroubled && <WorrySign />}
      {isPlaced && `${subject.name} `}
      {latest ? <strong>{sayRead(gauge, latest.value, voice)}</strong> : `${key}: nothing read yet`}
    </span>
  )
}
