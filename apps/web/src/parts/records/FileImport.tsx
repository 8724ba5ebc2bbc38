'use client'

import type { Id, Imported, ImportPreview } from '@fryward/shared'
import type { UseMutationResult } from '@tanstack/react-query'
import { type ReactNode, useState } from 'react'
import { FormProblem } from '@/base/forms/Form.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import styles from './file-import.module.css'
import { ImportLines } from './ImportLines.tsx'

type Undo = UseMutationResult<{ struck: number }, Error, Id>
type Props = {
  /** What a line of the file is one of. */
  one: string
  preview: UseMutationResult<ImportPreview, Error, string>
  keep: UseMutationResult<Imported, Error, string>
  undo: Undo
  /** What the file is to look like. */
  children: ReactNode
}

/** A CSV file that is read, looked at line by line, kept, and taken back as one where it was wrong. */
export function FileImport({ one, preview, keep, undo, children }: Props) {
  const [text, setText] = useState('')
  const choose = async (file: File | undefined) => {
    if (!file) return
    const read = await file.text()
    setText(read)
    keep.reset()
    undo.reset()
    preview.mutate(read)
  }
  return (
    <>
      {children}
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
        <Kept made={keep.data} undo={undo} />
      ) : (
        preview.data && (
          <Preview one={one} preview={preview.data} isBusy={keep.isPending} onKeep={() => keep.mutate(text)} />
        )
      )}
    </>
  )
}

type Seen = { one: string; preview: ImportPreview; isBusy: boolean; onKeep: () => void }

function Preview({ one, preview: { good, lines, note }, isBusy, onKeep }: Seen) {
  return (
    <>
      <p role="status">
        {good} of {lines.length} {lines.length === 1 ? 'line' : 'lines'} can be kept.
      </p>
      {note && <p>{note}</p>}
      {good > 0 && (
        <div>
          <Button variant="filled" isBusy={isBusy} onClick={onKeep}>
            Keep {good} {good === 1 ? one : `${one}s`}
          </Button>
        </div>
      )}
      <ImportLines lines={lines} />
    </>
  )
}

function Kept({ made, undo }: { made: Imported; undo: Undo }) {
  const said = undo.data ? `Taken back: ${undo.data.struck} struck out.` : `${made.kept} kept.`
  return (
    <>
      <Notice title={said}>
        {!undo.data && made.note && <p>{made.note}</p>}
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
