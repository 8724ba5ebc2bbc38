'use client'

import { useState } from 'react'
import { FormProblem } from '@/base/forms/Form.tsx'
import { useRoom } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { Section } from '@/base/ui/Page.tsx'
import { useLeaveRoom } from '@/parts/account/queries.ts'
import styles from './account.module.css'

/** Asks once more in place: the second tap is the one that counts. */
export function LeaveRoom() {
  const room = useRoom()
  const leave = useLeaveRoom()
  const [isSure, setSure] = useState(false)
  return (
    <Section title={`Leave ${room.name}`}>
      <p className={styles.soft}>What you recorded stays. An owner can invite you again.</p>
      <div className={styles.buttons}>
        {isSure ? (
          <>
            <Button
              isBusy={leave.isPending}
              onClick={() => leave.mutate(room.id, { onSuccess: () => window.location.assign('/rooms?choose=1') })}
            >
              Yes, leave {room.name}
            </Button>
            <Button variant="subtle" onClick={() => setSure(false)}>
              Stay
            </Button>
          </>
        ) : (
          <Button variant="subtle" onClick={() => setSure(true)}>
            Leave the room
          </Button>
        )}
      </div>
      <FormProblem error={leave.error} />
    </Section>
  )
}
