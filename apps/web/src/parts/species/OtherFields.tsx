import { type CareKind, careKinds } from '@fryward/shared'
import { careLabels } from '@fryward/words'
import { TextInput } from '@mantine/core'
import { NumberBox } from '@/base/forms/NumberBox.tsx'
import { Row } from '@/base/forms/Row.tsx'
import { SelectBox } from '@/base/forms/SelectBox.tsx'
import { daysLabels, type TypedOther } from './typed-species.ts'

/** All that a room says of a species without a profile. */
export function OtherFields({ other, onOther }: { other: TypedOther; onOther: (other: TypedOther) => void }) {
  const days = daysLabels[other.care]
  return (
    <>
      <TextInput
        label="Scientific name"
        description="Such as Synchiropus splendidus"
        required
        value={other.name}
        onChange={(event) => onOther({ ...other, name: event.currentTarget.value })}
      />
      <Row>
        <SelectBox
          label="Its eggs are"
          value={other.care}
          onChoose={(care) => onOther({ ...other, care: care as CareKind })}
          choices={careKinds.map((value) => ({ value, label: careLabels[value] }))}
        />
        <NumberBox
          label={`${days.slice(0, 1).toUpperCase()}${days.slice(1)}`}
          help="Not known? Leave it empty"
          unitWord="days"
          isWhole
          text={other.days}
          onText={(text) => onOther({ ...other, days: text })}
        />
      </Row>
    </>
  )
}
