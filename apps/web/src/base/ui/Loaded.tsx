'use client'

import { sayTime } from '@fryward/words'

import type { UseQueryResult } from '@tanstack/react-query'
import type { ReactNode } from 'react'
import { isApiProblem, sentenceOf } from '@/base/api/problem.ts'
import { deviceVoice } from '@/base/room/device-voice.ts'
import { useVoice } from '@/base/room/room-context.tsx'
import { Button } from './Button.tsx'
import styles from './loaded.module.css'
import { Notice, WorrySign } from './Notice.tsx'

type Props<T> = {
  query: UseQueryResult<T>
  /** The page's final shape in grey, so that nothing jumps. */
  skeleton: ReactNode
  /** What could not be loaded, as in "Today's list did not come". */
  what: string
  children: (data: T) => ReactNode
}

/** Loading, failed with retry, or the thing itself; what was loaded once stays when a refresh fails, with its age said. */
export function Loaded<T>({ query, skeleton, what, children }: Props<T>) {
  if (query.data !== undefined)
    return (
      <>
        {query.isError && <Stale query={query} what={what} />}
        {children(query.data)}
      </>
    )
  if (query.isPending) return <>{skeleton}</>
  const isGone = isApiProblem(query.error) && query.error.code === 'not_found'
  return (
    <Notice tone="worry" title={isGone ? 'Not found' : `${what} did not come`}>
      <p>{sentenceOf(query.error)}</p>
      {!isGone && (
        <>
          <p>What was booked stays booked.</p>
          <Button variant="default" isBusy={query.isFetching} onClick={() => void query.refetch()}>
            Try again
          </Button>
        </>
      )}
    </Notice>
  )
}

function Stale<T>({ query, what }: { query: UseQueryResult<T>; what: string }) {
  // By this device's own clock: it is the one beside the page.
  const voice = { ...useVoice(), timeZone: deviceVoice().timeZone }
  return (
    <p className={styles.stale} role="status">
      <WorrySign />
      <span>
        {what} is as of {sayTime(new Date(query.dataUpdatedAt), { ...voice, timeZone: deviceVoice().timeZone })}: no
        newer one came.
      </span>
      <Button variant="subtle" isBusy={query.isFetching} onClick={() => void query.refetch()}>
        Try again
      </Button>
    </p>
  )
}
