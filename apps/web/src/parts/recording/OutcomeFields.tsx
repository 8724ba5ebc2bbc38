'use client'

import { type Outcome, outcomes } from '@fryward/shared'
import { outcomeLabels, typedNumber, type UnitVoice } from '@fryward/words'
import { TextInput } from '@mantine/core'
import { ChoiceChips } from '@/base/forms/Chips.tsx'
import { filled } from '@/base/forms/filled.ts'
import { NumberBox } from '@/base/forms/NumberBox.tsx'
import type { FactDraft, FieldsProps } from './fact-draft.ts'
import { useFactDraft } from './use-fact-draft.ts'

type Typed = { outcome: Outcome; number: string; note: string }

function toDraft(typed: Typed, voice: UnitVoice): FactDraft {
  const number = typedNumber(typed.number, null, voice)
  if (!number || number < 1) return 'How many, 1 or more.'
  return { kind: 'outcome', data: filled({ outcome: typed.outcome, number, note: typed.note.trim() }) }
}

/** Fish that leave the room's care alive or by choice: counted, never booked as lost. */
export function OutcomeFields({ onDraft }: FieldsProps) {
  const [typed, change] = useFactDraft<Typed>({ outcome: 'placed', number: '', note: '' }, onDraft, toDraft)
  return (
    <>
      <ChoiceChips
        legend="What became of them"
        choices={outcomes.map((value) => ({ value, label: outcomeLabels[value] }))}
        value={typed.outcome}
        onChoose={(value) => {
          const outcome = outcomes.find((one) => one === value)
          if (outcome) change({ outcome })
        }}
      />
      <NumberBox label="How many" isWhole isLarge text={typed.number} onText={(number) => change({ number })} />
      <TextInput
        label="Note"
        description="Where to, or why"
        value={typed.note}
        onChange={(event) => change({ note: event.currentTarget.value })}
      />
    </>
  )
}
