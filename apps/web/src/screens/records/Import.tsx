'use client'

import type { Imported, ImportPreview } from '@fryward/shared'
import { useState } from 'react'
import { FormProblem } from '@/base/forms/Form.tsx'
import { useRoom } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { Card, Section } from '@/base/ui/Page.tsx'
import { useImportCounts, usePreviewImport, useUndoImport } from '@/parts/records/queries.ts'
import { ImportLines } from './ImportLines.tsx'
import styles from './records.module.css'

/** Counts of a notebook from a CSV file: read, looked at line by line, kept, and taken back as one where it was wrong. */
export function Import() {
  const room = useRoom()
  const [text, setText] = useState('')
  const preview = usePreviewImport(room.id)
  const keep = useImportCounts(room.id)
  const choose = async (file: File | undefined) => {
    if (!file) return
    const read = await file.text()
    setText(read)
    keep.reset()
    preview.mutate(read)
  }
  return (
    <Section title="Bring counts in">
      <Card>
        <p>
          A file saved as CSV, a line a count, its first line naming the columns: <code>date</code>, <code>thing</code>{' '}
          (its name here) and <code>samples</code> (60 66); where they are known <code>time</code>,{' '}
          <code>volume_ml</code>, <code>dilution</code>, <code>females</code>, <code>eggs</code>. Nothing is kept before
          you have seen each line.
        </p>
        <label className={styles.choose}>
          <span>Choose a file</span>
          <input
            type="file"
            accept=".csv,.txt,text/csv,text/plain"
            onChange={(event) => {
              void choose(event.currentTarget.files?.[0])
              // The same file, mended, is another one.
              event.currentTarget.value = ''
            }}
          />
        </label>
        <FormProblem error={preview.error ?? keep.error} />
        {keep.data ? (
          <Kept made={keep.data} />
        ) : (
          preview.data && <Preview preview={preview.data} isBusy={keep.isPending} onKeep={() => keep.mutate(text)} />
        )}
      </Card>
    </Section>
  )
}

function Preview({ preview, isBusy, onKeep }: { preview: ImportPreview; isBusy: boolean; onKeep: () => void }) {
  const { good, lines } = preview
  return (
    <>
      <p role="status">
        {good} of {lines.length} {lines.length === 1 ? 'line' : 'lines'} can be kept.
      </p>
      {good > 0 && (
        <div>
          <Button variant="filled" isBusy={isBusy} onClick={onKeep}>
            Keep {good} {good === 1 ? 'count' : 'counts'}
          </Button>
        </div>
      )}
      <ImportLines lines={lines} />
    </>
  )
}

function Kept({ made }: { made: Imported }) {
  const undo = useUndoImport(useRoom().id)
  const said = undo.data ? `Taken back: ${undo.data.struck} struck out.` : `${made.kept} kept.`
  return (
    <>
      <Notice title={said}>
        {!undo.data && (
          <Button isBusy={undo.isPending} onClick={() => undo.mutate(made.id)}>
            Take them all back
          </Button>
        )}
      </Notice>
      <FormProblem error={undo.error} />
      <ImportLines lines={made.lines.filter(({ problem }) => problem !== null)} />
    </>
  )
}
