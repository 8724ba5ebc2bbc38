'use client'

import { typedNumber, type UnitVoice } from '@fryward/words'
import { NumberBox } from '@/base/forms/NumberBox.tsx'
import { type Destination, useDestinations } from '@/parts/things/use-destinations.ts'
import type { FactDraft, FieldsProps } from './fact-draft.ts'
import { useFactDraft } from './use-fact-draft.ts'

type Litres = Record<string, string>

function toPart({ key, to, subjectId }: Destination, litres: Litres, voice: UnitVoice) {
  const volumeL = typedNumber(litres[key] ?? '', 'L', voice)
  if (volumeL === undefined || volumeL <= 0) return []
  return [subjectId === undefined ? { to, volumeL } : { to, subjectId, volumeL }]
}

/** Where each litre went; the whole is their sum. */
export function HarvestFields({ subject, onDraft }: FieldsProps) {
  const destinations = useDestinations().filter((one) => one.subjectId !== subject.id)
  const [litres, change] = useFactDraft<Litres>({}, onDraft, (typed, voice): FactDraft => {
    const parts = destinations.flatMap((one) => toPart(one, typed, voice))
    const volumeL = Number(parts.reduce((sum, part) => sum + part.volumeL, 0).toFixed(3))
    return parts.length === 0 ? 'How much went where.' : { kind: 'harvest', data: { volumeL, parts } }
  })
  return destinations.map((one) => (
    <NumberBox
      key={one.key}
      label={`To ${one.name}`}
      unit="L"
      text={litres[one.key] ?? ''}
      onText={(text) => change({ [one.key]: text })}
    />
  ))
}
