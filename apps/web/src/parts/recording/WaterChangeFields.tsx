'use client'

import { typedNumber, type UnitVoice } from '@fryward/words'
import { filled } from '@/base/forms/filled.ts'
import { NumberBox } from '@/base/forms/NumberBox.tsx'
import { Row } from '@/base/forms/Row.tsx'
import { useRoom } from '@/base/room/room-context.tsx'
import type { FactDraft, FieldsProps } from './fact-draft.ts'
import { useFactDraft } from './use-fact-draft.ts'

type Typed = { removed: string; added: string; salinity: string; temperature: string }

const toDraft = (typed: Typed, voice: UnitVoice): FactDraft => {
  const removedL = typedNumber(typed.removed, 'L', voice) ?? 0
  const addedL = typedNumber(typed.added, 'L', voice) ?? 0
  if (removedL === 0 && addedL === 0) return 'How much came out or went in.'
  return {
    kind: 'water_change',
    data: filled({
      removedL,
      addedL,
      salinity: typedNumber(typed.salinity, 'psu', voice),
      temperatureC: typedNumber(typed.temperature, 'degC', voice),
    }),
  }
}

export function WaterChangeFields({ onDraft }: FieldsProps) {
  const room = useRoom()
  const [typed, change] = useFactDraft<Typed>(
    { removed: '', added: '', salinity: '', temperature: '' },
    onDraft,
    toDraft,
  )
  return (
    <>
      <Row>
        <NumberBox label="Taken out" unit="L" isLarge text={typed.removed} onText={(removed) => change({ removed })} />
        <NumberBox label="Put in" unit="L" isLarge text={typed.added} onText={(added) => change({ added })} />
      </Row>
      <Row>
        <NumberBox
          label="Salinity of the new water"
          usual={room.salinity}
          help="0 for a top-up with fresh water"
          text={typed.salinity}
          onText={(salinity) => change({ salinity })}
        />
        <NumberBox
          label="Its temperature"
          unit="degC"
          usual={room.temperatureC}
          text={typed.temperature}
          onText={(temperature) => change({ temperature })}
        />
      </Row>
    </>
  )
}
