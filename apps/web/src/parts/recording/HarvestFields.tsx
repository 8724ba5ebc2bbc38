'use client'

import { typedNumber } from '@fryward/words'
import { useState } from 'react'
import { NumberBox } from '@/base/forms/NumberBox.tsx'
import { useVoice } from '@/base/room/room-context.tsx'
import { type Destination, useDestinations } from '@/parts/things/use-destinations.ts'
import type { FieldsProps } from './fact-draft.ts'

/** Where each litre went; the whole is their sum. */
export function HarvestFields({ subject, onDraft }: FieldsProps) {
  const voice = useVoice()
  const destinations = useDestinations().filter((one) => one.subjectId !== subject.id)
  const [litres, setLitres] = useState<Record<string, string>>({})
  const toPart = ({ key, to, subjectId }: Destination, texts: Record<string, string>) => {
    const volumeL = typedNumber(texts[key] ?? '', 'L', voice)
    if (volumeL === undefined || volumeL <= 0) return []
    return [subjectId === undefined ? { to, volumeL } : { to, subjectId, volumeL }]
  }
  const change = (key: string, text: string) => {
    const next = { ...litres, [key]: text }
    setLitres(next)
    const parts = destinations.flatMap((one) => toPart(one, next))
    const volumeL = Number(parts.reduce((sum, part) => sum + part.volumeL, 0).toFixed(3))
    onDraft(parts.length === 0 ? 'How much went where.' : { kind: 'harvest', data: { volumeL, parts } })
  }
  return destinations.map((one) => (
    <NumberBox
      key={one.key}
      label={`To ${one.name}`}
      unit="L"
      text={litres[one.key] ?? ''}
      onText={(text) => change(one.key, text)}
    />
  ))
}
