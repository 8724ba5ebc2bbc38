'use client'

import type { Alarm } from '@fryward/shared'
import { firstSteps, sayAlarm, sayMoment } from '@fryward/words'
import { serverNow } from '@/base/api/server-clock.ts'
import { FormProblem } from '@/base/forms/Form.tsx'
import { useMay, useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { Link } from '@/base/ui/Link.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { hrefOf } from '@/parts/things/href.ts'
import styles from './gauges.module.css'
import { useAcknowledgeAlarm, useQuietAlarm } from './queries.ts'

/** What it is, since when, what to do first, and who has it. */
export function AlarmCard({ alarm }: { alarm: Alarm }) {
  const voice = useVoice()
  const room = useRoom()
  const may = useMay('sign_off')
  const acknowledge = useAcknowledgeAlarm(room.id)
  const quiet = useQuietAlarm(room.id)
  const isQuiet = alarm.quietUntil !== null && Date.parse(alarm.quietUntil) > serverNow().getTime()
  const since = sayMoment(alarm.raisedAt, serverNow(), voice)
  const href = hrefOf(room.id, alarm.subject)
  const said = sayAlarm(alarm, voice)
  return (
    <Notice tone="worry" title={said}>
      <p>
        Since {since}. <strong>First:</strong> {firstSteps(alarm)}
      </p>
      <p className={styles.spans}>
        {href && <Link href={href}>Look at {alarm.subject.name}</Link>}
        <Link href={`/rooms/${room.id}/devices#${alarm.gauge.id}`}>Look at {alarm.gauge.key}</Link>
        <Link href={`/rooms/${room.id}/alarms`}>Who was told</Link>
      </p>
      <FormProblem error={acknowledge.error ?? quiet.error} />
      {alarm.acknowledgedByName ? (
        <p className={styles.soft}>{alarm.acknowledgedByName} has it.</p>
      ) : (
        may && (
          <div className={styles.spans}>
            <Button
              variant="filled"
              aria-label={`I have it: ${said}`}
              isBusy={acknowledge.isPending}
              onClick={() => acknowledge.mutate(alarm.id)}
            >
              I have it
            </Button>
            <Button
              variant="subtle"
              aria-label={`Quiet for an hour: ${said}`}
              isBusy={quiet.isPending}
              onClick={() => quiet.mutate({ alarmId: alarm.id, minutes: 60 })}
            >
              Quiet for an hour
            </Button>
          </div>
        )
      )}
      {isQuiet && <p className={styles.soft}>Quiet until {sayMoment(alarm.quietUntil ?? '', serverNow(), voice)}.</p>}
    </Notice>
  )
}
