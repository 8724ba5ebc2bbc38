'use client'

import type { SignInOutcome, SignInTry } from '@fryward/shared'
import { sayDevice, sayMoment } from '@fryward/words'
import { type UseQueryOptions, useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { serverNow } from '@/base/api/server-clock.ts'
import { useVoice } from '@/base/room/room-context.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import styles from './account.module.css'

const outcomes = {
  signed_in: 'Signed in',
  signed_in_again: 'Signed in again, for something that matters',
  code_asked: 'Right password, asked for the code',
  wrong_password: 'Wrong password',
  wrong_code: 'Wrong code',
  reset_asked: 'Asked for a new password by mail',
  reset_not_mailed: 'The link for a new password could not be mailed',
  reset_link_made: 'The owner of the server made a link for a new password',
  password_reset: 'New password given by a link',
} as const satisfies Record<SignInOutcome, string>

const shownAtFirst = 10

type Options = UseQueryOptions<SignInTry[], Error, SignInTry[], string[]>

/** Tries to sign in, the newest first: how each went, as whom, from where. */
export function SignIns({ options }: { options: Options }) {
  const voice = useVoice()
  const tries = useQuery(options)
  const [isWhole, setWhole] = useState(false)
  return (
    <Loaded query={tries} skeleton={<Bones heights={[4, 4, 4]} />} what="The list of tries">
      {(data) =>
        data.length === 0 ? (
          <Notice>None in the last 90 days.</Notice>
        ) : (
          <>
            <ul className={styles.lines}>
              {data.slice(0, isWhole ? data.length : shownAtFirst).map((each) => (
                <li key={each.id} className={styles.line}>
                  <span>
                    <strong>{outcomes[each.outcome]}</strong>
                    <span className={styles.soft}>
                      {' '}
                      {sayMoment(each.at, serverNow(), voice)}: {each.email} on {sayDevice(each.browser)}, from{' '}
                      {each.address}
                    </span>
                  </span>
                </li>
              ))}
            </ul>
            {!isWhole && data.length > shownAtFirst && (
              <div>
                <Button variant="subtle" onClick={() => setWhole(true)}>
                  Show all {data.length}
                </Button>
              </div>
            )}
          </>
        )
      }
    </Loaded>
  )
}
