'use client'

import { type Device, type Gauge, type GaugeQuantity, gaugeQuantities, unitOfGauge } from '@fryward/shared'
import { changeFactor, changeLabel, gaugeQuantityLabels, toTyped, typedNumber } from '@fryward/words'
import { TextInput } from '@mantine/core'
import { Form } from '@/base/forms/Form.tsx'
import { NumberBox } from '@/base/forms/NumberBox.tsx'
import { SelectBox } from '@/base/forms/SelectBox.tsx'
import { useDraft } from '@/base/forms/use-draft.ts'
import { useRoom, useVoice } from '@/base/room/room-context.tsx'
import { useChangeGauge, useCreateGauge } from '@/parts/gauges/queries.ts'
import { useThings } from '@/parts/things/use-things.ts'

type Props = { onDone: () => void } & ({ device: Device; gauge?: never } | { gauge: Gauge; device?: never })

/** A new gauge, or the limits of one. */
export function GaugeForm({ device, gauge, onDone }: Props) {
  const voice = useVoice()
  const room = useRoom()
  const places = usePlaces()
  const usual = { forMinutes: gauge?.forMinutes ?? 10, silentAfterMinutes: gauge?.silentAfterMinutes ?? 30 }
  const typed = useDraft(
    {
      key: '',
      quantity: gauge?.quantity ?? ('temperature' as GaugeQuantity),
      subjectId: room.id,
      low: toTyped(gauge?.low, gauge?.unit ?? null, voice),
      high: toTyped(gauge?.high, gauge?.unit ?? null, voice),
      forMinutes: toTyped(usual.forMinutes, null, voice),
      silentAfterMinutes: toTyped(usual.silentAfterMinutes, null, voice),
      maxPerHour: toTyped(gauge?.maxPerHour && gauge.maxPerHour * changeFactor(gauge.unit, voice), null, voice),
      stuckAfterHours: toTyped(gauge ? gauge.stuckAfterHours : 24, null, voice),
    },
    gauge ? `gauge/${gauge.id}/${gauge.version}` : `gauge-of/${device.id}`,
  )
  const { draft, draftKey, change } = typed
  const about = gauge?.key ?? draft.key
  const create = useCreateGauge(room.id, device?.id ?? '', { draftKey, about })
  const update = useChangeGauge(room.id, gauge?.id ?? '', { draftKey, about })
  const unit = gauge?.unit ?? unitOfGauge[draft.quantity]
  const send = () => {
    const maxPerHour = typedNumber(draft.maxPerHour, null, voice)
    const limits = {
      low: typedNumber(draft.low, unit, voice) ?? null,
      high: typedNumber(draft.high, unit, voice) ?? null,
      forMinutes: typedNumber(draft.forMinutes, null, voice) ?? usual.forMinutes,
      silentAfterMinutes: typedNumber(draft.silentAfterMinutes, null, voice) ?? usual.silentAfterMinutes,
      maxPerHour: maxPerHour === undefined ? null : maxPerHour / changeFactor(unit, voice),
      stuckAfterHours: typedNumber(draft.stuckAfterHours, null, voice) ?? null,
    }
    if (gauge) update.mutate({ ...limits, version: gauge.version }, { onSuccess: onDone })
    else {
      const { key, quantity, subjectId } = draft
      create.mutate({ key, quantity, subjectId, ...limits }, { onSuccess: onDone })
    }
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
      {!gauge && (
        <>
          <TextInput
            label="What the device calls it"
            description="The name in its posts, such as t1"
            required
            value={draft.key}
            onChange={(event) => change({ key: event.currentTarget.value })}
          />
          <SelectBox
            label="It measures"
            value={draft.quantity}
            choices={gaugeQuantities.map((value) => ({ value, label: gaugeQuantityLabels[value] }))}
            onChoose={(value) => {
              const quantity = gaugeQuantities.find((one) => one === value)
              if (quantity) change({ quantity })
            }}
          />
          <SelectBox
            label="It hangs in"
            value={draft.subjectId}
            choices={places}
            onChoose={(subjectId) => change({ subjectId })}
          />
        </>
      )}
      <NumberBox label="At least" unit={unit} text={draft.low} onText={(low) => change({ low })} />
      <NumberBox label="At most" unit={unit} text={draft.high} onText={(high) => change({ high })} />
      <NumberBox
        label="Outside for so long before it is an alarm"
        unit="minutes"
        isWhole
        usual={usual.forMinutes}
        text={draft.forMinutes}
        onText={(forMinutes) => change({ forMinutes })}
      />
      <NumberBox
        label="Silent for so long before it is an alarm"
        unit="minutes"
        isWhole
        usual={usual.silentAfterMinutes}
        text={draft.silentAfterMinutes}
        onText={(silentAfterMinutes) => change({ silentAfterMinutes })}
      />
      <NumberBox
        label={`Most change within an hour, ${changeLabel(unit, voice)}`}
        unit={null}
        text={draft.maxPerHour}
        onText={(maxPerHour) => change({ maxPerHour })}
      />
      <NumberBox
        label="The same value for so long, and it is stuck"
        unit="hours"
        isWhole
        text={draft.stuckAfterHours}
        onText={(stuckAfterHours) => change({ stuckAfterHours })}
      />
    </Form>
  )
}

/** Where a gauge may hang: tanks and cultures in use, and the room. */
function usePlaces(): { value: string; label: string }[] {
  const room = useRoom()
  const { tanks, cultures } = useThings()
  return [
    { value: room.id, label: `The room, ${room.name}` },
    ...[...tanks, ...cultures].filter(({ endedAt }) => !endedAt).map(({ id, name }) => ({ value: id, label: name })),
  ]
}
