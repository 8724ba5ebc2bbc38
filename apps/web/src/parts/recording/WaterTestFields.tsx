'use client'

import type { Unit, WaterTestData } from '@fryward/shared'
import { typedNumber, type UnitVoice } from '@fryward/words'
import { filled } from '@/base/forms/filled.ts'
import { NumberBox } from '@/base/forms/NumberBox.tsx'
import { Row } from '@/base/forms/Row.tsx'
import type { FactDraft, FieldsProps } from './fact-draft.ts'
import { useFactDraft } from './use-fact-draft.ts'

type Name = keyof WaterTestData
type Measure = { name: Name; label: string; unit: Unit; help?: string }

const measures: Measure[] = [
  { name: 'temperatureC', label: 'Temperature', unit: 'degC' },
  { name: 'salinity', label: 'Salinity', unit: 'psu' },
  { name: 'pH', label: 'pH', unit: 'pH' },
  { name: 'totalAmmoniaNMgPerL', label: 'Total ammonia, as nitrogen', unit: 'mg_per_L' },
  { name: 'nitriteNMgPerL', label: 'Nitrite, as nitrogen', unit: 'mg_per_L' },
  { name: 'nitrateNMgPerL', label: 'Nitrate, as nitrogen', unit: 'mg_per_L' },
  { name: 'oxygenMgPerL', label: 'Oxygen', unit: 'mg_per_L' },
]

const toDraft = (typed: Record<string, string>, voice: UnitVoice): FactDraft => {
  const data = filled(
    Object.fromEntries(measures.map(({ name, unit }) => [name, typedNumber(typed[name] ?? '', unit, voice)])),
  )
  return Object.keys(data).length === 0 ? 'At least one measured value.' : { kind: 'water_test', data }
}

export function WaterTestFields({ onDraft }: FieldsProps) {
  const [typed, change] = useFactDraft<Record<string, string>>({}, onDraft, toDraft)
  return (
    <Row>
      {measures.map(({ name, label, unit }) => (
        <NumberBox
          key={name}
          label={label}
          unit={unit === 'pH' || unit === 'psu' ? null : unit}
          text={typed[name] ?? ''}
          onText={(text) => change({ [name]: text })}
        />
      ))}
    </Row>
  )
}
