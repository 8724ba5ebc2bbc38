'use client'

import { useRoom } from '@/base/room/room-context.tsx'
import { Card, Section } from '@/base/ui/Page.tsx'
import { FileImport } from '@/parts/records/FileImport.tsx'
import { useImportCounts, usePreviewImport, useUndoImport } from '@/parts/records/queries.ts'

/** Counts of a notebook from a CSV file. */
export function Import() {
  const room = useRoom()
  const [preview, keep, undo] = [usePreviewImport(room.id), useImportCounts(room.id), useUndoImport(room.id)]
  return (
    <Section title="Bring counts in">
      <Card>
        <FileImport one="count" preview={preview} keep={keep} undo={undo}>
          <p>
            A file saved as CSV, a line a count, its first line naming the columns: <code>date</code>,{' '}
            <code>thing</code> (its name here) and <code>samples</code> (60 66); where they are known <code>time</code>,{' '}
            <code>volume_ml</code>, <code>dilution</code>, <code>females</code>, <code>eggs</code>. Nothing is kept
            before you have seen each line.
          </p>
        </FileImport>
      </Card>
    </Section>
  )
}
