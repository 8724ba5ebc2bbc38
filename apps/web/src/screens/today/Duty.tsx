'use client'

import type { Day } from '@fryward/shared'
import { useQuery } from '@tanstack/react-query'
import { sentenceOf } from '@/base/api/problem.ts'
import { useMay, useRoom } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { useToast } from '@/base/ui/toast.tsx'
import { meOptions } from '@/parts/session/me.ts'
import { useTakeDuty } from '@/parts/tasks/queries.ts'
import styles from './today.module.css'

/** Who has the room on this day, to be taken by whoever reads it. */
export function Duty({ day }: { day: Day }) {
  const room = useRoom()
  const me = useQuery(meOptions()).data?.user
  const may = useMay('sign_off') && day.date >= day.today
  const take = useTakeDuty(room.id, day.date)
  const toast = useToast()
  const { onDuty } = day
  if (!onDuty && !may) return null
  const isMine = onDuty !== null && onDuty.userId === me?.id
  const said = isMine ? 'You have the room' : onDuty ? `On duty: ${onDuty.name}` : 'Who has the room?'
  const set = (userId: string | null) => take.mutate(userId, { onError: (error) => toast({ text: sentenceOf(error) }) })
  return (
    <span className={styles.duty}>
      {said}
      {may && me && (
        <Button variant="subtle" isBusy={take.isPending} onClick={() => set(isMine ? null : me.id)}>
          {isMine ? 'Give it back' : onDuty ? 'I take over' : 'I have it'}
        </Button>
      )}
    </span>
  )
}
