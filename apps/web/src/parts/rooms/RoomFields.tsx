'use client'

import { locales, unitSystems } from '@fryward/shared'
import { localeLabel, sayCode, unitSystemLabels } from '@fryward/words'
import { TextInput } from '@mantine/core'
import { ChoiceChips } from '@/base/forms/Chips.tsx'
import { NumberBox } from '@/base/forms/NumberBox.tsx'
import { Row } from '@/base/forms/Row.tsx'
import { SelectBox } from '@/base/forms/SelectBox.tsx'
import { TimeBox } from '@/base/forms/TimeBox.tsx'
import { type RoomDraft, withVoice } from './room-draft.ts'
import { timeZones } from './time-zones.ts'

type Props = { draft: RoomDraft; change: (part: Partial<RoomDraft>) => void; error?: string | undefined }

const localeChoices = () =>
  locales.map((value) => ({ value, label: localeLabel(value) })).sort((a, b) => a.label.localeCompare(b.label))

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
        choices={timeZones(draft.timeZone).map((zone) => ({ value: zone, label: sayCode(zone) }))}
      />
      <ChoiceChips
        legend="Units"
        choices={unitSystems.map((value) => ({ value, label: unitSystemLabels[value] }))}
        value={draft.units}
        onChoose={(value) => {
          const units = unitSystems.find((one) => one === value)
          if (units) change(withVoice(draft, { units }))
        }}
      />
      <SelectBox
        label="Numbers, dates and times"
        help="As people write them here; the sentences stay English"
        value={draft.locale}
        onChoose={(value) => {
          const locale = locales.find((one) => one === value)
          if (locale) change(withVoice(draft, { locale }))
        }}
        choices={localeChoices()}
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
