'use client'

import type { CountTarget } from '@fryward/shared'
import { sayCountTarget, sayNumber, typedNumber, type UnitVoice } from '@fryward/words'
import { useQuery } from '@tanstack/react-query'
import { ChoiceChips } from '@/base/forms/Chips.tsx'
import { filled } from '@/base/forms/filled.ts'
import { useRoom, useVoice } from '@/base/room/room-context.tsx'
import { type Sampled, Samples } from '@/parts/counting/Samples.tsx'
import { culturesOptions } from '@/parts/cultures/queries.ts'
import type { FactDraft, FieldsProps } from './fact-draft.ts'
import { copepodCountTargets, countTargetsOf, isHeadTarget } from './record-choices.ts'
import { useFactDraft } from './use-fact-draft.ts'

type Typed = Sampled & { of: CountTarget }

function toDraft(typed: Typed, voice: UnitVoice): FactDraft {
  const animals = typed.animals.flatMap((text) => typedNumber(text, null, voice) ?? [])
  if (animals.length === 0) return 'At least one sample, as a whole number.'
  const volumeMl = typedNumber(typed.volumeMl, 'mL', voice)
  if (!isHeadTarget(typed.of) && !volumeMl) return 'The volume of one sample in mL.'
  return {
    kind: 'count',
    data: filled({
      of: typed.of,
      animals,
      volumeMl: isHeadTarget(typed.of) ? undefined : volumeMl,
      dilution: typedNumber(typed.dilution, null, voice) ?? 1,
      eggs: typedNumber(typed.eggs, null, voice),
      females: typedNumber(typed.females, null, voice),
    }),
  }
}

export function CountFields({ subject, onDraft }: FieldsProps) {
  const voice = useVoice()
  const cultures = useQuery(culturesOptions(useRoom().id)).data ?? []
  const isCopepods = cultures.some((culture) => culture.id === subject.id && culture.kind === 'copepod')
  const targets = isCopepods ? copepodCountTargets : countTargetsOf[subject.kind]
  const [typed, change] = useFactDraft<Typed>(
    { of: targets[0] ?? 'culture', animals: ['', '', ''], volumeMl: '1', dilution: '1', eggs: '', females: '' },
    onDraft,
    toDraft,
  )
  return (
    <>
      {targets.length > 1 && (
        <ChoiceChips
          legend="What was counted"
          choices={targets.map((value) => ({ value, label: sayCountTarget(value, subject.care) }))}
          value={typed.of}
          onChoose={(of) => {
            const target = targets.find((one) => one === of)
            if (target) change({ of: target })
          }}
        />
      )}
      <Samples typed={typed} change={change} isHeads={isHeadTarget(typed.of)} withEggs={typed.of === 'culture'} />
      <p aria-live="polite">{sayDensity(typed, voice)}</p>
    </>
  )
}

/** What the samples make, before they are kept: a dilution left out shows at once. Heads make only themselves. */
function sayDensity(typed: Typed, voice: UnitVoice): string | null {
  const animals = typed.animals.flatMap((text) => typedNumber(text, null, voice) ?? [])
  const volumeMl = typedNumber(typed.volumeMl, 'mL', voice)
  const dilution = typedNumber(typed.dilution, null, voice) ?? 1
  if (isHeadTarget(typed.of) || animals.length === 0 || !volumeMl) return null
  const mean = animals.reduce((sum, one) => sum + one, 0) / animals.length
  return `Makes ${sayNumber((mean * dilution) / volumeMl, voice)} per mL`
}
