'use client'

import { unitSystems } from '@fryward/shared'
import { TextInput } from '@mantine/core'
import { ChoiceChips } from '@/base/forms/Chips.tsx'
import { NumberBox } from '@/base/forms/NumberBox.tsx'
import { Row } from '@/base/forms/Row.tsx'
import { SelectBox } from '@/base/forms/SelectBox.tsx'
import { TimeBox } from '@/base/forms/TimeBox.tsx'
import { toTyped } from '@/base/forms/typed-number.ts'
import { unitSystemLabels } from '@/base/words/labels.ts'
import { type RoomDraft, withUnits } from './room-draft.ts'
import { timeZones } from './time-zones.ts'

type Props = { draft: RoomDraft; change: (part: Partial<RoomDraft>) => void; error?: string | undefined }

/** Name, time zone, units, hours of light and what new water is mixed to. */
export function RoomFields({ draft, change, error }: Props) {
  return (
    <>
      <TextInput
        label="Name of the room"
        required
        value={draft.name}
        onChange={(event) => change({ name: event.currentTarget.value })}
      />
      <SelectBox
        label="Time zone"
        help="A day in the lists is a day here"
        value={draft.timeZone}
        onChoose={(timeZone) => change({ timeZone })}
        choices={timeZones(draft.timeZone).map((zone) => ({ value: zone, label: zone.replaceAll('_', ' ') }))}
      />
      <ChoiceChips
        legend="Units"
        choices={unitSystems.map((value) => ({ value, label: unitSystemLabels[value] }))}
        value={draft.units}
        onChoose={(value) => {
          const units = unitSystems.find((one) => one === value)
          if (units) change(withUnits(draft, units, (valueC) => toTyped(valueC, 'degC', units)))
        }}
      />
      <Row isTight>
        <TimeBox label="Lights on" isRequired text={draft.lightsOnAt} onText={(lightsOnAt) => change({ lightsOnAt })} />
        <TimeBox
          label="Lights off"
          isRequired
          text={draft.lightsOffAt}
          onText={(lightsOffAt) => change({ lightsOffAt })}
        />
      </Row>
      <Row>
        <NumberBox
          label="New water: salinity"
          isRequired
          text={draft.salinity}
          onText={(salinity) => change({ salinity })}
          error={error}
        />
        <NumberBox
          label="New water: temperature"
          unitWord={draft.units === 'us' ? '°F' : '°C'}
          isRequired
          text={draft.temperature}
          onText={(temperature) => change({ temperature })}
        />
      </Row>
    </>
  )
}
