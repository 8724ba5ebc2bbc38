'use client'

import { type Device, type Gauge, unitOfGauge } from '@fryward/shared'
import { Form } from '@/base/forms/Form.tsx'
import { useDraft } from '@/base/forms/use-draft.ts'
import { useRoom, useVoice } from '@/base/room/room-context.tsx'
import { useChangeGauge, useCreateGauge } from '@/parts/gauges/queries.ts'
import { BandFields, DoubtFields, NewGaugeFields } from './GaugeFields.tsx'
import { type TypedGauge, toTypedGauge, typedLimits, usualOf } from './typed-gauge.ts'

type Props = { onDone: () => void } & ({ device: Device; gauge?: never } | { gauge: Gauge; device?: never })

/** A new gauge, or the limits of one. */
export function GaugeForm({ device, gauge, onDone }: Props) {
  const voice = useVoice()
  const room = useRoom()
  const typed = useDraft<TypedGauge>(
    toTypedGauge(gauge, { roomId: room.id, voice }),
    gauge ? `gauge/${gauge.id}/${gauge.version}` : `gauge-of/${device.id}`,
  )
  const { draft, draftKey, change } = typed
  const about = gauge?.key ?? draft.key
  const create = useCreateGauge(room.id, device?.id ?? '', { draftKey, about })
  const update = useChangeGauge(room.id, gauge?.id ?? '', { draftKey, about })
  const unit = gauge?.unit ?? unitOfGauge[draft.quantity]
  const usual = usualOf(gauge)
  const send = () => {
    const limits = typedLimits(draft, { unit, usual, voice })
    const { key, quantity, subjectId } = draft
    if (gauge) update.mutate({ ...limits, version: gauge.version }, { onSuccess: onDone })
    else create.mutate({ key, quantity, subjectId, ...limits }, { onSuccess: onDone })
  }
  return (
    <Form
      submitLabel={gauge ? 'Save the limits' : 'Add the gauge'}
      isBusy={create.isPending || update.isPending}
      error={create.error ?? update.error}
      onSubmit={send}
      onCancel={onDone}
      typed={typed}
    >
      {!gauge && <NewGaugeFields draft={draft} change={change} />}
      <BandFields draft={draft} change={change} unit={unit} usual={usual} />
      <DoubtFields draft={draft} change={change} unit={unit} />
    </Form>
  )
}
