'use client'

import { type Tank, type TankKind, tankKinds } from '@fryward/shared'
import { tankKindLabels } from '@fryward/words'
import { useState } from 'react'
import { ChoiceChips } from '@/base/forms/Chips.tsx'
import { Form } from '@/base/forms/Form.tsx'
import { useDraft } from '@/base/forms/use-draft.ts'
import { useRoom } from '@/base/room/room-context.tsx'
import { VesselFields } from '@/parts/vessels/VesselFields.tsx'
import { readVessel, startVessel } from '@/parts/vessels/vessel-draft.ts'
import { useChangeTank, useCreateTank } from './queries.ts'

/** A new tank, or changes to one. */
export function TankForm({ tank, onDone }: { tank?: Tank; onDone: () => void }) {
  const room = useRoom()
  const [missing, setMissing] = useState<string>()
  const typed = useDraft(
    {
      ...startVessel(room, tank, { hasFilter: true }),
      kind: tank?.kind ?? ('broodstock' as TankKind),
    },
    `tank/${tank?.id ?? 'new'}`,
  )
  const { draft, change } = typed
  const create = useCreateTank(room.id, { draftKey: typed.draftKey, about: draft.name })
  const update = useChangeTank(room.id, tank?.id ?? '', { draftKey: typed.draftKey, about: draft.name })
  const send = () => {
    const vessel = readVessel(draft, room)
    if (typeof vessel === 'string') return setMissing(vessel)
    setMissing(undefined)
    const fields = { ...vessel, kind: draft.kind }
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
      />
    </Form>
  )
}
