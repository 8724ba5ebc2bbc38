'use client'

import { Textarea } from '@mantine/core'
import { useState } from 'react'
import { CheckBox } from '@/base/forms/CheckBox.tsx'
import { Form } from '@/base/forms/Form.tsx'
import { SelectBox } from '@/base/forms/SelectBox.tsx'
import { useDraft } from '@/base/forms/use-draft.ts'
import { useMay, useRoom } from '@/base/room/room-context.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { Card, Section } from '@/base/ui/Page.tsx'
import { useToast } from '@/base/ui/toast.tsx'
import { useWriteNote } from '@/parts/hand-over/queries.ts'
import { useThings } from '@/parts/things/use-things.ts'

const empty = { text: '', isWorry: false, subjectId: '' }

/** A note for whoever comes next; a worry stays on the page until it is over. */
export function NoteForm() {
  const may = useMay('record')
  const [turn, setTurn] = useState(0)
  if (!may) return <Notice>You are reading along: notes are for those who do the rounds.</Notice>
  return <OneNote key={turn} onGoOn={() => setTurn(turn + 1)} />
}

function OneNote({ onGoOn }: { onGoOn: () => void }) {
  const room = useRoom()
  const toast = useToast()
  const typed = useDraft(empty, 'note')
  const { draft, change, reset } = typed
  const write = useWriteNote(room.id, { draftKey: typed.draftKey })
  const [isMissing, setMissing] = useState(false)
  const about = useAbout()
  const send = () => {
    const text = draft.text.trim()
    setMissing(text === '')
    if (text === '') return
    write.mutate(
      { text, isWorry: draft.isWorry, ...(draft.subjectId === '' ? {} : { subjectId: draft.subjectId }) },
      {
        onSuccess: () => {
          toast({ text: draft.isWorry ? 'The worry is on the page until it is over' : 'Noted' })
          reset()
        },
      },
    )
  }
  return (
    <Section title="For whoever comes next">
      <Card>
        <Form
          submitLabel={draft.isWorry ? 'Write the worry' : 'Write the note'}
          isBusy={write.isPending}
          error={write.error}
          onSubmit={send}
          typed={typed}
          onGoOn={onGoOn}
        >
          <Textarea
            label="What should they know?"
            rows={3}
            maxLength={2000}
            value={draft.text}
            error={isMissing ? 'A few words are enough.' : undefined}
            onChange={(event) => change({ text: event.currentTarget.value })}
          />
          <SelectBox
            label="About"
            value={draft.subjectId}
            onChoose={(subjectId) => change({ subjectId })}
            choices={about}
          />
          <CheckBox
            label="A worry: keep it on the page until it is over"
            isChecked={draft.isWorry}
            onCheck={(isWorry) => change({ isWorry })}
          />
        </Form>
      </Card>
    </Section>
  )
}

/** What a note can be about: nothing in particular, or anything that lives here now. */
function useAbout(): { value: string; label: string }[] {
  const { tanks, cultures, pairs, clutches, batches, groups } = useThings()
  const living = [cultures, batches, groups, pairs, tanks].flatMap((some) =>
    some.filter((one) => one.endedAt === null).map((one) => ({ value: one.id, label: one.name })),
  )
  const eggs = clutches.filter((one) => one.state === 'incubating').map((one) => ({ value: one.id, label: one.name }))
  return [{ value: '', label: 'the room as a whole' }, ...eggs, ...living]
}
