'use client'

import type { NewFact } from '@fryward/shared'
import { useState } from 'react'
import { serverNow } from '@/base/api/server-clock.ts'
import { DateTimeBox } from '@/base/forms/DateTimeBox.tsx'
import { Form } from '@/base/forms/Form.tsx'
import { useDraft } from '@/base/forms/use-draft.ts'
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
import { factPlace, labelOfRecord } from './record-choices.ts'
import { SpawningFields } from './SpawningFields.tsx'
import { TreatmentFields } from './TreatmentFields.tsx'
import { TypedFieldsProvider } from './use-fact-draft.ts'
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

type Typed = {
  fields: object | undefined
  at: string | undefined
  /** Asked why more left than the book knew of; stays so while the answer to it is on its way. */
  isAsked: boolean
  beyondBook: string
}
const start: Typed = { fields: undefined, at: undefined, isAsked: false, beyondBook: '' }

/** One fact without a task. The API says what is allowed; this only says what is missing. */
export function RecordForm({ subject, kind, onClose }: { subject: Thing; kind: RecordKind; onClose: () => void }) {
  const room = useRoom()
  const typed = useDraft(start, factPlace(subject.id, kind))
  const { draft: entered, change } = typed
  const about = { draftKey: typed.draftKey, about: `${labelOfRecord(kind).toLowerCase()}, ${subject.name}` }
  const record = useRecordFact(room.id, about)
  const lay = useCreateClutch(room.id, about)
  const toast = useToast()
  const [draft, setDraft] = useState<FactDraft>('Fill in what was measured.')
  const [missing, setMissing] = useState<string>()
  const Fields = fieldsOf[kind]
  // Of another number it is not known whether the book has it: that is asked anew.
  const keep = (fields: object) => {
    setMissing(undefined)
    change({ fields, isAsked: false })
  }
  const finish = () => {
    toast({ text: `Recorded: ${subject.name}` })
    onClose()
  }
  const send = () => {
    if (typeof draft === 'string') return setMissing(draft)
    setMissing(undefined)
    // An answer may come much later than the tap.
    const at = entered.at ?? serverNow().toISOString()
    if (!('data' in draft)) {
      const eggs = draft.eggs === undefined ? {} : { eggs: draft.eggs }
      return lay.mutate({ pairId: subject.id, spawnedAt: at, ...eggs }, { onSuccess: finish })
    }
    const data = entered.isAsked ? { ...Object(draft.data), beyondBook: entered.beyondBook } : draft.data
    // The kind and its data come from the same set of fields; the contract is checked by the API.
    const fact = { ...draft, data, subjectId: subject.id, at } as NewFact
    record.mutate(fact, {
      onSuccess: finish,
      onError: (error) => isAskedAboutBook(error) && change({ isAsked: true }),
    })
  }
  return (
    <Form
      submitLabel="Record"
      isBusy={record.isPending || lay.isPending}
      error={record.error ?? lay.error}
      onSubmit={send}
      onCancel={onClose}
      typed={typed}
    >
      <TypedFieldsProvider value={{ fields: entered.fields, keep }}>
        <Fields subject={subject} onDraft={setDraft} />
      </TypedFieldsProvider>
      <details>
        <summary style={{ minHeight: '3rem', paddingTop: '0.7rem' }}>Earlier than now</summary>
        <DateTimeBox label="When" value={entered.at} onChange={(at) => change({ at })} />
      </details>
      {entered.isAsked && <BeyondBookBox text={entered.beyondBook} onText={(beyondBook) => change({ beyondBook })} />}
      {missing && <Notice tone="worry" title={missing} />}
    </Form>
  )
}
