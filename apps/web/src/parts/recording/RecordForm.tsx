'use client'

import type { NewFact } from '@fryward/shared'
import { useState } from 'react'
import { DateTimeBox } from '@/base/forms/DateTimeBox.tsx'
import { Form } from '@/base/forms/Form.tsx'
import { useRoom } from '@/base/room/room-context.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { useToast } from '@/base/ui/toast.tsx'
import { useCreateClutch } from '@/parts/clutches/queries.ts'
import { BeyondBookBox, isAskedAboutBook } from '@/parts/facts/BeyondBookBox.tsx'
import { useRecordFact } from '@/parts/facts/queries.ts'
import type { RecordKind } from '@/parts/facts/record-kinds.ts'
import type { Thing } from '@/parts/things/use-things.ts'
import { CountFields } from './CountFields.tsx'
import { FeedingFields } from './FeedingFields.tsx'
import type { FactDraft, FieldsProps } from './fact-draft.ts'
import { HarvestFields } from './HarvestFields.tsx'
import { LossFields } from './LossFields.tsx'
import { ObservationFields } from './ObservationFields.tsx'
import { OutcomeFields } from './OutcomeFields.tsx'
import { SpawningFields } from './SpawningFields.tsx'
import { TreatmentFields } from './TreatmentFields.tsx'
import { WaterChangeFields } from './WaterChangeFields.tsx'
import { WaterTestFields } from './WaterTestFields.tsx'

const fieldsOf = {
  count: CountFields,
  harvest: HarvestFields,
  feeding: FeedingFields,
  water_change: WaterChangeFields,
  water_test: WaterTestFields,
  loss: LossFields,
  observation: ObservationFields,
  spawning: SpawningFields,
  outcome: OutcomeFields,
  treatment: TreatmentFields,
} as const satisfies Record<RecordKind, React.ComponentType<FieldsProps>>

/** One fact without a task. The API says what is allowed; this only says what is missing. */
export function RecordForm({ subject, kind, onClose }: { subject: Thing; kind: RecordKind; onClose: () => void }) {
  const room = useRoom()
  const record = useRecordFact(room.id)
  const lay = useCreateClutch(room.id)
  const toast = useToast()
  const [at, setAt] = useState<string>()
  const [draft, setDraft] = useState<FactDraft>('Fill in what was measured.')
  const [missing, setMissing] = useState<string>()
  // Stays open once asked, also while the answer to it is on its way.
  const [isAsked, setAsked] = useState(false)
  const [beyondBook, setBeyondBook] = useState('')
  const Fields = fieldsOf[kind]
  const finish = () => {
    toast({ text: `Recorded: ${subject.name}` })
    onClose()
  }
  const send = () => {
    if (typeof draft === 'string') return setMissing(draft)
    setMissing(undefined)
    if (!('data' in draft))
      return lay.mutate(
        {
          pairId: subject.id,
          spawnedAt: at ?? new Date().toISOString(),
          ...(draft.eggs === undefined ? {} : { eggs: draft.eggs }),
        },
        { onSuccess: finish },
      )
    const data = isAsked ? { ...Object(draft.data), beyondBook } : draft.data
    // The kind and its data come from the same set of fields; the contract is checked by the API.
    const fact = { ...draft, data, subjectId: subject.id, ...(at === undefined ? {} : { at }) } as NewFact
    record.mutate(fact, {
      onSuccess: finish,
      onError: (error) => setAsked((was) => was || isAskedAboutBook(error)),
    })
  }
  return (
    <Form
      submitLabel="Record"
      isBusy={record.isPending || lay.isPending}
      error={record.error ?? lay.error}
      onSubmit={send}
      onCancel={onClose}
    >
      <Fields subject={subject} onDraft={setDraft} />
      <details>
        <summary style={{ minHeight: '3rem', paddingTop: '0.7rem' }}>Earlier than now</summary>
        <DateTimeBox label="When" value={at} onChange={setAt} />
      </details>
      {isAsked && <BeyondBookBox text={beyondBook} onText={setBeyondBook} />}
      {missing && <Notice tone="worry" title={missing} />}
    </Form>
  )
}
