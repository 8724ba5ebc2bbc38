'use client'

import type { FoodChange, FoodWhatIf, PlainDate } from '@fryward/shared'
import { sayFoodChange } from '@fryward/words'
import { useState } from 'react'
import { FormProblem } from '@/base/forms/Form.tsx'
import { SelectBox } from '@/base/forms/SelectBox.tsx'
import { useMay, useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { Section } from '@/base/ui/Page.tsx'
import { useWhatIf } from '@/parts/food/queries.ts'
import styles from './food.module.css'

type Props = {
  changes: readonly FoodChange[]
  /** What is not offered, and why; null where all is. */
  notAsked: string | null
  today: PlainDate
  nameOf: (id: string) => string
  onAnswer: (change: FoodChange, answer: FoodWhatIf) => void
}

/** "What if this pair spawns tonight?": the same picture with one thing more. */
export function WhatIfBox({ changes, notAsked, today, nameOf, onAnswer }: Props) {
  const voice = useVoice()
  const room = useRoom()
  const may = useMay('record')
  const ask = useWhatIf(room.id)
  const [chosen, setChosen] = useState('0')
  const change = changes[Number(chosen)]
  if (!may || !change) return null
  const choices = changes.map((each, index) => ({
    value: String(index),
    label: sayFoodChange(each, { nameOf, today, voice }),
  }))
  return (
    <Section title="What if">
      <div className={styles.asked}>
        <SelectBox label="Suppose that" choices={choices} value={chosen} onChoose={setChosen} />
        <Button
          isBusy={ask.isPending}
          onClick={() => ask.mutate(change, { onSuccess: (answer) => onAnswer(change, answer) })}
        >
          Show what then
        </Button>
      </div>
      {notAsked && <p className={styles.soft}>{notAsked}</p>}
      <FormProblem error={ask.error} />
    </Section>
  )
}
