'use client'

import { typedNumber } from '@fryward/words'
import { NumberBox } from '@/base/forms/NumberBox.tsx'
import { useVoice } from '@/base/room/room-context.tsx'
import type { FieldsProps } from './fact-draft.ts'
import { useFactDraft } from './use-fact-draft.ts'

/** Eggs laid make a new clutch; the number is a guess that may be left out. */
export function SpawningFields({ onDraft }: FieldsProps) {
  const voice = useVoice()
  const [typed, change] = useFactDraft({ eggs: '' }, onDraft, ({ eggs }) => ({
    kind: 'spawning',
    eggs: typedNumber(eggs, null, voice),
  }))
  return (
    <NumberBox
      label="About how many eggs"
      help="May be left out. Say below when they were laid, if it was not just now."
      isWhole
      isLarge
      text={typed.eggs}
      onText={(eggs) => change({ eggs })}
    />
  )
}
