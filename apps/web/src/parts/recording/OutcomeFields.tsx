'use client'

import { type Outcome, outcomes } from '@fryward/shared'
import { outcomeLabels, typedNumber, type UnitVoice } from '@fryward/words'
import { TextInput } from '@mantine/core'
import { CheckBox } from '@/base/forms/CheckBox.tsx'
import { ChoiceChips } from '@/base/forms/Chips.tsx'
import { filled } from '@/base/forms/filled.ts'
import { NumberBox } from '@/base/forms/NumberBox.tsx'
import type { FactDraft, FieldsProps } from './fact-draft.ts'
import { useFactDraft } from './use-fact-draft.ts'

type Typed = {
  outcome: Outcome
  number: string
  lengthMm: string
  eatsDryFood: boolean
  eatsFrozenFood: boolean
  wasUnfedADay: boolean
  toWhom: string
  price: string
  note: string
}

const untyped: Typed = {
  ...{ outcome: 'placed', number: '', lengthMm: '' },
  ...{ eatsDryFood: false, eatsFrozenFood: false, wasUnfedADay: false },
  ...{ toWhom: '', price: '', note: '' },
}

function toDraft(typed: Typed, voice: UnitVoice): FactDraft {
  const number = typedNumber(typed.number, null, voice)
  if (!number || number < 1) return 'How many, 1 or more.'
  const { outcome, eatsDryFood, eatsFrozenFood, wasUnfedADay } = typed
  const lengthMm = typedNumber(typed.lengthMm, null, voice)
  // What is not ticked was not said; it is no "no".
  const said = {
    eatsDryFood: eatsDryFood || undefined,
    eatsFrozenFood: eatsFrozenFood || undefined,
    wasUnfedADay: wasUnfedADay || undefined,
  }
  const placing = outcome === 'placed' ? { ...said, toWhom: typed.toWhom.trim(), price: typed.price.trim() } : {}
  return { kind: 'outcome', data: filled({ outcome, number, lengthMm, ...placing, note: typed.note.trim() }) }
}

/** Fish that leave the room's care alive or by choice: counted, never booked as lost. */
export function OutcomeFields({ onDraft }: FieldsProps) {
  const [typed, change] = useFactDraft<Typed>(untyped, onDraft, toDraft)
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
      <NumberBox
        label="Length of most"
        unitWord="mm"
        text={typed.lengthMm}
        onText={(lengthMm) => change({ lengthMm })}
      />
      {typed.outcome === 'placed' && <Placing typed={typed} change={change} />}
      <TextInput
        label="Note"
        description={typed.outcome === 'placed' ? undefined : 'Where to, or why'}
        value={typed.note}
        onChange={(event) => change({ note: event.currentTarget.value })}
      />
    </>
  )
}

/** What whoever takes them will ask, and what keeps them well on the way. */
function Placing({ typed, change }: { typed: Typed; change: (part: Partial<Typed>) => void }) {
  return (
    <>
      <CheckBox
        label="They eat dry food"
        isChecked={typed.eatsDryFood}
        onCheck={(eatsDryFood) => change({ eatsDryFood })}
      />
      <CheckBox
        label="They eat frozen food"
        isChecked={typed.eatsFrozenFood}
        onCheck={(eatsFrozenFood) => change({ eatsFrozenFood })}
      />
      <CheckBox
        label="Unfed for a day before they were packed"
        isChecked={typed.wasUnfedADay}
        onCheck={(wasUnfedADay) => change({ wasUnfedADay })}
      />
      <TextInput
        label="To whom"
        description="A shop, a keeper, another room"
        value={typed.toWhom}
        onChange={(event) => change({ toWhom: event.currentTarget.value })}
      />
      <TextInput
        label="Price, if you want it kept"
        description="As agreed: 12 each"
        value={typed.price}
        onChange={(event) => change({ price: event.currentTarget.value })}
      />
    </>
  )
}
