import { gaugeQuantities, type Unit } from '@fryward/shared'
import { changeLabel, gaugeQuantityLabels } from '@fryward/words'
import { TextInput } from '@mantine/core'
import { NumberBox } from '@/base/forms/NumberBox.tsx'
import { SelectBox } from '@/base/forms/SelectBox.tsx'
import { useRoom, useVoice } from '@/base/room/room-context.tsx'
import { useThings } from '@/parts/things/use-things.ts'
import type { TypedGauge, usualOf } from './typed-gauge.ts'

type Props = { draft: TypedGauge; change: (part: Partial<TypedGauge>) => void }
type LimitProps = Props & { unit: Unit; usual: ReturnType<typeof usualOf> }

/** What a new gauge is called, measures and hangs in. */
export function NewGaugeFields({ draft, change }: Props) {
  const places = usePlaces()
  return (
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
  )
}

/** The band that it keeps to, and for how long it may be outside or silent. */
export function BandFields({ draft, change, unit, usual }: LimitProps) {
  return (
    <>
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
    </>
  )
}

/** Past what no water changes, or stays the same: then the gauge is doubted. */
export function DoubtFields({ draft, change, unit }: Omit<LimitProps, 'usual'>) {
  const voice = useVoice()
  return (
    <>
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
    </>
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
