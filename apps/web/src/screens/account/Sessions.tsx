'use client'

import type { Session } from '@fryward/shared'
import { sayDevice, sayMoment } from '@fryward/words'
import { useQuery } from '@tanstack/react-query'
import { serverNow } from '@/base/api/server-clock.ts'
import { FormProblem } from '@/base/forms/Form.tsx'
import { useVoice } from '@/base/room/room-context.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { Section } from '@/base/ui/Page.tsx'
import { sessionsOptions, useEndOtherSessions, useEndSession } from '@/parts/account/queries.ts'
import styles from './account.module.css'

/** Where somebody is signed in; what they do not know, they end. */
export function Sessions() {
  const sessions = useQuery(sessionsOptions())
  const endOthers = useEndOtherSessions()
  return (
    <Section title="Where you are signed in">
      <Loaded query={sessions} skeleton={<Bones heights={[4, 4]} />} what="The list of browsers">
        {(data) => (
          <>
            <ul className={styles.lines}>
              {data.map((session) => (
                <SessionLine key={session.id} session={session} />
              ))}
            </ul>
            {data.length > 1 && (
              <div>
                <Button isBusy={endOthers.isPending} onClick={() => endOthers.mutate()}>
                  Sign out everywhere but here
                </Button>
              </div>
            )}
          </>
        )}
      </Loaded>
      <FormProblem error={endOthers.error} />
    </Section>
  )
}

function SessionLine({ session }: { session: Session }) {
  const voice = useVoice()
  const end = useEndSession()
  const device = sayDevice(session.browser)
  return (
    <li className={styles.line}>
      <span>
        <strong>{device}</strong>
        {session.isThisOne && ' (this one)'}
        <span className={styles.soft}>
          {' '}
          since {sayMoment(session.signedInAt, serverNow(), voice)}
          {session.address && `, from ${session.address}`}
        </span>
      </span>
      {!session.isThisOne && (
        <Button
          variant="subtle"
          isBusy={end.isPending}
          onClick={() => end.mutate(session.id)}
          aria-label={`Sign out ${device}, signed in ${sayMoment(session.signedInAt, serverNow(), voice)}`}
        >
          Sign out
        </Button>
      )}
      <FormProblem error={end.error} />
    </li>
  )
}
