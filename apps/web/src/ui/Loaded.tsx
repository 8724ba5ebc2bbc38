'use client'

import type { UseQueryResult } from '@tanstack/react-query'
import type { ReactNode } from 'react'
import { isApiProblem, sentenceOf } from '@/api/problem.ts'
import { Button } from '@/ui/Button.tsx'
import { Notice } from './Notice.tsx'

type Props<T> = {
  query: UseQueryResult<T>
  /** The page's final shape in grey, so that nothing jumps. */
  skeleton: ReactNode
  /** What could not be loaded, as in "Today's list did not come". */
  what: string
  children: (data: T) => ReactNode
}

/** Loading, failed with retry, or the thing itself; what was loaded once stays when a refresh fails. */
export function Loaded<T>({ query, skeleton, what, children }: Props<T>) {
  if (query.data !== undefined) return <>{children(query.data)}</>
  if (query.isPending) return <>{skeleton}</>
  const isGone = isApiProblem(query.error) && query.error.code === 'not_found'
  return (
    <Notice tone="worry" title={isGone ? 'Not found' : `${what} did not come`}>
      <p>{sentenceOf(query.error)}</p>
      {!isGone && (
        <Button variant="default" isBusy={query.isFetching} onClick={() => void query.refetch()}>
          Try again
        </Button>
      )}
    </Notice>
  )
}
