'use client'

import { NumberBox } from '@/forms/NumberBox.tsx'
import { Row } from '@/forms/Row.tsx'

type Water = { volume: string; temperature: string; salinity: string }
type Props = { draft: Water; change: (part: Partial<Water>) => void; error?: string | undefined }

/** Volume, temperature and salinity of a vessel, in the room's units. */
export function WaterFields({ draft, change, error }: Props) {
  return (
    <Row>
      <NumberBox
        label="Volume"
        help="Of water, when full to its mark"
        unit="L"
        isRequired
        error={error}
        text={draft.volume}
        onText={(volume) => change({ volume })}
      />
      <NumberBox
        label="Temperature"
        unit="degC"
        isRequired
        text={draft.temperature}
        onText={(temperature) => change({ temperature })}
      />
      <NumberBox label="Salinity" isRequired text={draft.salinity} onText={(salinity) => change({ salinity })} />
    </Row>
  )
}
