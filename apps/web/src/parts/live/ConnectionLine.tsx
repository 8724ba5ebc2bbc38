'use client'

import { sayTime, type Voice } from '@fryward/words'
import { deviceVoice } from '@/base/room/device-voice.ts'
import { useIsGoing } from '@/base/ui/going.ts'
import { WorrySign } from '@/base/ui/Notice.tsx'
import styles from './connection-line.module.css'
import type { Connection } from './use-room-events.ts'

/** "As of 07:40, no connection": what is shown may be old. Keeps no room while all is well. */
export function ConnectionLine({
  connection,
  voice = deviceVoice(),
}: {
  connection: Connection
  voice: Voice | undefined
}) {
  const isGoing = useIsGoing()
  return (
    <div role="status">
      {!connection.isLive && (
        <p className={styles.line}>
          <WorrySign />
          As of {sayTime(connection.since, voice)}, no connection.{' '}
          {isGoing ? 'The page you tapped opens when it is back.' : 'Trying again.'}
        </p>
      )}
    </div>
  )
}
