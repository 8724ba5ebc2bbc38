'use client'

import { FormProblem } from '@/base/forms/Form.tsx'
import { Switch } from '@/base/forms/Switch.tsx'
import { useRoom } from '@/base/room/room-context.tsx'
import { Card, Section } from '@/base/ui/Page.tsx'
import { useChangeRoom } from '@/parts/rooms/queries.ts'

/** Whether owners of this room are asked for a second factor. */
export function OwnersFactor() {
  const room = useRoom()
  const save = useChangeRoom(room.id)
  return (
    <Section title="Owners sign in with a code">
      <Card>
        <p>
          On: whoever changes roles, invitations or settings here has a second factor. Each owner sets up their own
          under More, Your account.
        </p>
        <Switch
          label="Owners need a second factor"
          isOn={room.asksSecondFactor}
          onSwitch={(asksSecondFactor) => save.mutate({ asksSecondFactor, version: room.version })}
        />
        <FormProblem error={save.error} />
      </Card>
    </Section>
  )
}
