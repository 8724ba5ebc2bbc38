'use client'

import { type Tank, type TankKind, tankKinds } from '@fryward/shared'
import { sayPlainTime, tankKindLabels, toTyped, typedNumber } from '@fryward/words'
import { useState } from 'react'
import { ChoiceChips } from '@/base/forms/Chips.tsx'
import { Form } from '@/base/forms/Form.tsx'
import { NumberBox } from '@/base/forms/NumberBox.tsx'
import { useDraft } from '@/base/forms/use-draft.ts'
import { useRoom } from '@/base/room/room-context.tsx'
import { VesselFields } from '@/parts/vessels/VesselFields.tsx'
import { readVessel, startVessel } from '@/parts/vessels/vessel-draft.ts'
import { useChangeTank, useCreateTank } from './queries.ts'

const emptyMeans = (kind: TankKind) =>
  kind === 'larval'
    ? 'Left empty: as long as your rule “Check the larvae’s light” says.'
    : 'Left empty: as long as the room’s lights.'

/** A new tank, or changes to one. */
export function TankForm({ tank, onDone }: { tank?: Tank; onDone: () => void }) {
  const room = useRoom()
  const [missing, setMissing] = useState<string>()
  const typed = useDraft(
    {
      ...startVessel(room, tank, { hasFilter: true }),
      kind: tank?.kind ?? ('broodstock' as TankKind),
      lightHours: toTyped(tank?.lightHours ?? undefined, 'hours', room),
    },
    `tank/${tank?.id ?? 'new'}`,
  )
  const { draft, change } = typed
  const create = useCreateTank(room.id, { draftKey: typed.draftKey, about: draft.name })
  const update = useChangeTank(room.id, tank?.id ?? '', { draftKey: typed.draftKey, about: draft.name })
  const send = () => {
    const vessel = readVessel(draft, room)
    if (typeof vessel === 'string') return setMissing(vessel)
    const lightHours = draft.lightHours.trim() === '' ? null : typedNumber(draft.lightHours, 'hours', room)
    if (lightHours === undefined) return setMissing('Hours of light as a number, or left empty.')
    setMissing(undefined)
    const fields = { ...vessel, kind: draft.kind, lightHours }
    if (tank) update.mutate({ ...fields, version: tank.version }, { onSuccess: onDone })
    else create.mutate(fields, { onSuccess: onDone })
  }
  return (
    <Form
      submitLabel={tank ? 'Save' : 'Add the tank'}
      isBusy={create.isPending || update.isPending}
      error={create.error ?? update.error}
      onSubmit={send}
      onCancel={tank && onDone}
      typed={typed}
      onGoOn={onDone}
    >
      <VesselFields
        draft={draft}
        change={change}
        bearer="the tank"
        error={missing}
        kind={
          <ChoiceChips
            legend="For"
            choices={tankKinds.map((value) => ({ value, label: tankKindLabels[value] }))}
            value={draft.kind}
            onChoose={(value) => {
              const kind = tankKinds.find((one) => one === value)
              if (kind) change({ kind })
            }}
          />
        }
      >
        <NumberBox
          label="Hours of light"
          help={`A day, from ${sayPlainTime(room.lightsOnAt, room)}. ${emptyMeans(draft.kind)}`}
          unit="hours"
          text={draft.lightHours}
          onText={(lightHours) => change({ lightHours })}
        />
      </VesselFields>
    </Form>
  )
}
