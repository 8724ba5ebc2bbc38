'use client'

import { TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { todayIn } from '@/base/dates/local-time.ts'
import { Form } from '@/base/forms/Form.tsx'
import { SelectBox } from '@/base/forms/SelectBox.tsx'
import { useDraft } from '@/base/forms/use-draft.ts'
import { useRoom } from '@/base/room/room-context.tsx'
import { batchesOptions } from '@/parts/batches/queries.ts'
import { culturesOptions } from '@/parts/cultures/queries.ts'
import { useCreateFeedLink } from './queries.ts'

type Props = { start?: { batchId?: string; cultureId?: string }; onDone: () => void }

/** "This batch is fed from this culture." */
export function FeedLinkForm({ start = {}, onDone }: Props) {
  const room = useRoom()
  const batches = (useQuery(batchesOptions(room.id)).data ?? []).filter((one) => one.endedAt === null)
  const cultures = (useQuery(culturesOptions(room.id)).data ?? []).filter((one) => one.endedAt === null)
  const typed = useDraft(
    {
      batchId: start.batchId ?? '',
      cultureId: start.cultureId ?? '',
      fromOn: todayIn(room.timeZone),
    },
    `feed-link/${start.batchId ?? ''}/${start.cultureId ?? ''}`,
  )
  const { draft, change } = typed
  const create = useCreateFeedLink(room.id, { draftKey: typed.draftKey })
  return (
    <Form
      submitLabel="Link them"
      isBusy={create.isPending}
      error={create.error}
      onSubmit={() => create.mutate(draft, { onSuccess: onDone })}
      typed={typed}
      onGoOn={onDone}
    >
      {!start.batchId && (
        <SelectBox
          label="Larval batch"
          isRequired
          value={draft.batchId}
          onChoose={(batchId) => change({ batchId })}
          choices={[{ value: '', label: 'choose' }, ...batches.map((one) => ({ value: one.id, label: one.name }))]}
        />
      )}
      {!start.cultureId && (
        <SelectBox
          label="Fed from culture"
          isRequired
          value={draft.cultureId}
          onChoose={(cultureId) => change({ cultureId })}
          choices={[
            { value: '', label: 'choose' },
            ...cultures.map((one) => ({ value: one.id, label: one.isBackup ? `${one.name} (backup)` : one.name })),
          ]}
        />
      )}
      <TextInput
        type="date"
        label="From"
        required
        value={draft.fromOn}
        onChange={(event) => change({ fromOn: event.currentTarget.value })}
      />
    </Form>
  )
}
