'use client'

import type { Id } from '@fryward/shared'
import { useQuery } from '@tanstack/react-query'
import { useServerNow } from '@/base/dates/use-now.ts'
import { useRoom } from '@/base/room/room-context.tsx'
import { WorrySign } from '@/base/ui/Notice.tsx'
import { handOverOptions } from './queries.ts'
import { Settle } from './Settle.tsx'
import { WorryText } from './WorryText.tsx'
import styles from './worries.module.css'

/** Worries that nobody has said to be over: of the whole room, or those about one thing of it. */
export function OpenWorries({ subjectId }: { subjectId?: Id }) {
  const query = useQuery(handOverOptions(useRoom().id))
  const now = useServerNow(query.dataUpdatedAt)
  const worries =
    query.data?.worries.filter(({ subject }) => subjectId === undefined || subject?.id === subjectId) ?? []
  if (worries.length === 0) return null
  return (
    <ul className={styles.list} aria-label="Open worries">
      {worries.map((worry) => (
        <li key={worry.id}>
          <WorrySign />
          <WorryText worry={worry} now={now} />
          <Settle worry={worry} />
        </li>
      ))}
    </ul>
  )
}
