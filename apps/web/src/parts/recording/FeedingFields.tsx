'use client'

import { type Food, foods } from '@fryward/shared'
import { foodLabels, typedNumber, type UnitVoice } from '@fryward/words'
import { TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { ChoiceChips } from '@/base/forms/Chips.tsx'
import { filled } from '@/base/forms/filled.ts'
import { NumberBox } from '@/base/forms/NumberBox.tsx'
import { Row } from '@/base/forms/Row.tsx'
import { SelectBox } from '@/base/forms/SelectBox.tsx'
import { useRoom } from '@/base/room/room-context.tsx'
import { concentratesOptions } from '@/parts/concentrates/queries.ts'
import { culturesOptions } from '@/parts/cultures/queries.ts'
import type { FactDraft, FieldsProps } from './fact-draft.ts'
import { useFactDraft } from './use-fact-draft.ts'

type Typed = Record<'ml' | 'g' | 'animals' | 'concentrateId' | 'fromCultureId' | 'note', string> & {
  food: Food
  isChilled: boolean
}

const nothingTyped = { ml: '', g: '', animals: '', concentrateId: '', fromCultureId: '', note: '', isChilled: false }

const isFromJar = ({ food, fromCultureId, isChilled }: Typed) =>
  food === 'rotifers' && fromCultureId !== '' && isChilled

function toDraft(typed: Typed, voice: UnitVoice): FactDraft {
  const amountMl = typedNumber(typed.ml, 'mL', voice)
  const amountG = typedNumber(typed.g, 'g', voice)
  const isChilled = isFromJar(typed)
  const animals = isChilled ? typedNumber(typed.animals, 'animals', voice) : undefined
  if (isChilled && amountMl === undefined && animals === undefined)
    return 'How many mL of the jar, or how many rotifers: the reserve falls by that.'
  return {
    kind: 'feeding',
    data: filled({
      food: typed.food,
      amountMl,
      amountG,
      concentrateId: typed.food === 'concentrate' ? typed.concentrateId : '',
      fromCultureId: typed.fromCultureId,
      animals,
      isChilled: isChilled || undefined,
      note: typed.note.trim(),
    }),
  }
}

export function FeedingFields({ subject, onDraft }: FieldsProps) {
  const room = useRoom()
  const bottles = useQuery(concentratesOptions(room.id)).data ?? []
  const cultures = useQuery(culturesOptions(room.id)).data ?? []
  const start: Food =
    subject.kind === 'culture' ? 'concentrate' : subject.kind === 'larval_batch' ? 'rotifers' : 'frozen'
  const [typed, change] = useFactDraft<Typed>({ ...nothingTyped, food: start }, onDraft, toDraft)
  return (
    <>
      <ChoiceChips
        legend="What"
        choices={foods.map((value) => ({ value, label: foodLabels[value] }))}
        value={typed.food}
        onChoose={(value) => {
          const food = foods.find((one) => one === value)
          if (food) change({ food })
        }}
      />
      <Row>
        <NumberBox label="By volume" unit="mL" text={typed.ml} onText={(ml) => change({ ml })} isLarge />
        <NumberBox label="By weight" unit="g" text={typed.g} onText={(g) => change({ g })} isLarge />
      </Row>
      {typed.food === 'concentrate' && (
        <SelectBox
          label="Bottle"
          value={typed.concentrateId}
          onChoose={(concentrateId) => change({ concentrateId })}
          choices={[
            { value: '', label: 'not said' },
            ...bottles.filter((one) => !one.isFinished).map((one) => ({ value: one.id, label: one.name })),
          ]}
        />
      )}
      {(typed.food === 'rotifers' || typed.food === 'copepods') && (
        <SelectBox
          label="From culture"
          value={typed.fromCultureId}
          onChoose={(fromCultureId) => change({ fromCultureId })}
          choices={[
            { value: '', label: 'not said' },
            ...cultures.filter((one) => one.endedAt === null).map((one) => ({ value: one.id, label: one.name })),
          ]}
        />
      )}
      {subject.kind === 'larval_batch' && typed.food === 'rotifers' && typed.fromCultureId !== '' && (
        <ChoiceChips
          legend="Out of"
          choices={[
            { value: 'culture', label: 'its vessel' },
            { value: 'jar', label: 'its chilled jar' },
          ]}
          value={typed.isChilled ? 'jar' : 'culture'}
          onChoose={(value) => change({ isChilled: value === 'jar' })}
        />
      )}
      {isFromJar(typed) && (
        <NumberBox
          label="Rotifers in it, alive"
          unit="animals"
          text={typed.animals}
          onText={(animals) => change({ animals })}
        />
      )}
      <TextInput label="Note" value={typed.note} onChange={(event) => change({ note: event.currentTarget.value })} />
    </>
  )
}
