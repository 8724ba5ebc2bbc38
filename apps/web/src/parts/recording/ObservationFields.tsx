'use client'

import { type EggStage, eggStages, type Sign, type SubjectKind, signs } from '@fryward/shared'
import { eggStageLabels, isCarried, saySign } from '@fryward/words'
import { Textarea } from '@mantine/core'
import { ChoiceChips, ChoicesChips } from '@/base/forms/Chips.tsx'
import { filled } from '@/base/forms/filled.ts'
import type { FactDraft, FieldsProps } from './fact-draft.ts'
import { useFactDraft } from './use-fact-draft.ts'

type Typed = { signs: Sign[]; eggStage: EggStage | undefined; note: string }

const fishSigns: Sign[] = ['all_well', 'eggs_seen', 'no_eggs', 'fighting', 'not_eating', 'gasping', 'spots_or_wounds']
const signsOf: Record<SubjectKind, Sign[]> = {
  room: [],
  culture: [
    'all_well',
    'swimming_well',
    'swimming_slow',
    'sinking',
    'clumping',
    'foam',
    'bad_smell',
    'ciliates',
    'water_green',
    'water_tinted',
    'water_clear',
  ],
  tank: fishSigns,
  pair: fishSigns,
  clutch: ['all_well', 'larvae_out', 'no_eggs'],
  larval_batch: [
    'all_well',
    'swimming_well',
    'settled',
    'swimming_slow',
    'sinking',
    'not_eating',
    'water_green',
    'water_clear',
  ],
  juvenile_group: fishSigns,
}

function toDraft(typed: Typed): FactDraft {
  const note = typed.note.trim()
  if (typed.signs.length === 0 && !typed.eggStage && note === '') return 'A sign, an egg colour or a note.'
  return { kind: 'observation', data: filled({ signs: typed.signs, eggStage: typed.eggStage, note }) }
}

export function ObservationFields({ subject, onDraft }: FieldsProps) {
  const [typed, change] = useFactDraft<Typed>({ signs: [], eggStage: undefined, note: '' }, onDraft, toDraft)
  return (
    <>
      <ChoicesChips
        legend="Signs"
        choices={signsOf[subject.kind].map((value) => ({ value, label: saySign(value, subject.care) }))}
        values={typed.signs}
        onChoose={(values) => change({ signs: signs.filter((sign) => values.includes(sign)) })}
      />
      {subject.kind === 'clutch' && !isCarried(subject.care) && (
        <ChoiceChips
          legend="Colour of the eggs"
          choices={eggStages.map((value) => ({ value, label: eggStageLabels[value] }))}
          value={typed.eggStage}
          onChoose={(value) => change({ eggStage: eggStages.find((stage) => stage === value) })}
        />
      )}
      <Textarea
        label="Note"
        rows={2}
        value={typed.note}
        onChange={(event) => change({ note: event.currentTarget.value })}
      />
    </>
  )
}
