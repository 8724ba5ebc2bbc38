'use client'

import type { Room } from '@fryward/shared'
import { toTyped } from '@fryward/words'
import { useState } from 'react'
import { Form } from '@/base/forms/Form.tsx'
import { useDraft } from '@/base/forms/use-draft.ts'
import { VoiceProvider } from '@/base/room/room-context.tsx'
import { useToast } from '@/base/ui/toast.tsx'
import { useChangeRoom } from '@/parts/rooms/queries.ts'
import { RoomFields } from '@/parts/rooms/RoomFields.tsx'
import { RoundFields } from '@/parts/rooms/RoundFields.tsx'
import { type RoomDraft, readRoom } from '@/parts/rooms/room-draft.ts'
import { WalkFields } from '@/parts/rooms/WalkFields.tsx'

const startDraft = (room: Room): RoomDraft => ({
  name: room.name,
  timeZone: room.timeZone,
  units: room.units,
  locale: room.locale,
  lightsOnAt: room.lightsOnAt,
  lightsOffAt: room.lightsOffAt,
  rounds: room.rounds,
  stationOrder: room.stationOrder,
  salinity: toTyped(room.salinity, null, room),
  temperature: toTyped(room.temperatureC, 'degC', room),
})

export function SettingsForm({ room }: { room: Room }) {
  const toast = useToast()
  const typed = useDraft(startDraft(room), 'settings')
  const { draft, change } = typed
  const save = useChangeRoom(room.id, { draftKey: typed.draftKey })
  const [missing, setMissing] = useState<string>()
  const send = () => {
    const fields = readRoom(draft)
    if (typeof fields === 'string') return setMissing(fields)
    setMissing(undefined)
    save.mutate({ ...fields, version: room.version }, { onSuccess: () => toast({ text: 'Saved.' }) })
  }
  return (
    <VoiceProvider voice={draft}>
      <Form submitLabel="Save" isBusy={save.isPending} error={save.error} onSubmit={send} typed={typed}>
        <RoomFields draft={draft} change={change} error={missing} />
        <RoundFields rounds={draft.rounds} onRounds={(rounds) => change({ rounds })} />
        <WalkFields order={draft.stationOrder} onOrder={(stationOrder) => change({ stationOrder })} />
      </Form>
    </VoiceProvider>
  )
}
