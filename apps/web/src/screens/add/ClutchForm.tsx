'use client'

import { type ClutchIntent, clutchIntents } from '@fryward/shared'
import { intentLabels, typedNumber } from '@fryward/words'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { ChoiceChips } from '@/base/forms/Chips.tsx'
import { DateTimeBox } from '@/base/forms/DateTimeBox.tsx'
import { Form } from '@/base/forms/Form.tsx'
import { NumberBox } from '@/base/forms/NumberBox.tsx'
import { SelectBox } from '@/base/forms/SelectBox.tsx'
import { useDraft } from '@/base/forms/use-draft.ts'
import { useRoom, useVoice } from '@/base/room/room-context.tsx'
import { useCreateClutch } from '@/parts/clutches/queries.ts'
import { pairsOptions } from '@/parts/pairs/queries.ts'

/** Eggs laid by one pair. */
export function ClutchForm({ onDone }: { onDone: () => void }) {
  const voice = useVoice()
  const room = useRoom()
  const pairs = (useQuery(pairsOptions(room.id)).data ?? []).filter((one) => one.endedAt === null)
  const [openedAt] = useState(() => new Date().toISOString())
  const [missing, setMissing] = useState<string>()
  const typed = useDraft(
    {
      ...{ pairId: '', eggs: '', intent: 'undecided' as ClutchIntent },
      spawnedAt: openedAt as string | undefined,
    },
    'clutch/new',
  )
  const { draft, change } = typed
  const create = useCreateClutch(room.id, { draftKey: typed.draftKey })
  const send = () => {
    const { spawnedAt } = draft
    if (spawnedAt === undefined) return setMissing('When they were laid.')
    const eggs = typedNumber(draft.eggs, null, voice)
    create.mutate(
      { pairId: draft.pairId, spawnedAt, intent: draft.intent, ...(eggs === undefined ? {} : { eggs }) },
      { onSuccess: onDone },
    )
  }
  return (
    <Form
      submitLabel="Record the eggs"
      isBusy={create.isPending}
      error={create.error}
      onSubmit={send}
      typed={typed}
      onGoOn={onDone}
    >
      <SelectBox
        label="Laid by"
        isRequired
        value={draft.pairId}
        onChoose={(pairId) => change({ pairId })}
        choices={[{ value: '', label: 'choose' }, ...pairs.map((one) => ({ value: one.id, label: one.name }))]}
      />
      <DateTimeBox
        label="When"
        value={draft.spawnedAt}
        onChange={(spawnedAt) => change({ spawnedAt })}
        isRequired
        error={missing}
      />
      <NumberBox
        label="About how many"
        help="May be left out"
        isWhole
        text={draft.eggs}
        onText={(eggs) => change({ eggs })}
      />
      <ChoiceChips
        legend="What is meant with it"
        choices={clutchIntents.map((value) => ({ value, label: intentLabels[value] }))}
        value={draft.intent}
        onChoose={(value) => {
          const intent = clutchIntents.find((one) => one === value)
          if (intent) change({ intent })
        }}
      />
    </Form>
  )
}
