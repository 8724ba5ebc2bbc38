'use client'

import { LossDataSchema, type SubjectKind } from '@fryward/shared'
import { typedNumber, type UnitVoice } from '@fryward/words'
import { TextInput } from '@mantine/core'
import { ChoiceChips } from '@/base/forms/Chips.tsx'
import { filled } from '@/base/forms/filled.ts'
import { NumberBox } from '@/base/forms/NumberBox.tsx'
import type { FactDraft, FieldsProps } from './fact-draft.ts'
import { useFactDraft } from './use-fact-draft.ts'

const ofWhat = LossDataSchema.shape.of.options
type Of = (typeof ofWhat)[number]
type Typed = { number: string; of: Of; cause: string }

const labels: Record<Of, string> = {
  eggs: 'Eggs',
  larvae: 'Larvae',
  juveniles: 'Juveniles',
  adults: 'Adult fish',
  culture: 'The whole culture',
}
const usualOf: Record<SubjectKind, Of> = {
  room: 'adults',
  tank: 'adults',
  culture: 'culture',
  pair: 'adults',
  clutch: 'eggs',
  larval_batch: 'larvae',
  juvenile_group: 'juveniles',
}

function toDraft(typed: Typed, voice: UnitVoice): FactDraft {
  const number = typedNumber(typed.number, null, voice)
  if (!number || number < 1) return 'How many, 1 or more.'
  return { kind: 'loss', data: filled({ number, of: typed.of, cause: typed.cause.trim() }) }
}

export function LossFields({ subject, onDraft }: FieldsProps) {
  const start = { number: subject.kind === 'culture' ? '1' : '', of: usualOf[subject.kind], cause: '' }
  const [typed, change] = useFactDraft<Typed>(start, onDraft, toDraft)
  return (
    <>
      {subject.kind === 'tank' && (
        <ChoiceChips
          legend="Of what"
          choices={ofWhat.map((value) => ({ value, label: labels[value] }))}
          value={typed.of}
          onChoose={(value) => {
            const of = ofWhat.find((one) => one === value)
            if (of) change({ of })
          }}
        />
      )}
      {typed.of !== 'culture' && (
        <NumberBox label="How many" isWhole isLarge text={typed.number} onText={(number) => change({ number })} />
      )}
      <TextInput
        label="What from, if known"
        value={typed.cause}
        onChange={(event) => change({ cause: event.currentTarget.value })}
      />
    </>
  )
}
