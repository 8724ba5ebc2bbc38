'use client'

import { useMay } from '@/base/room/room-context.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { Page } from '@/base/ui/Page.tsx'
import { Export } from './Export.tsx'
import { Import } from './Import.tsx'

/** Records out of the room for a spreadsheet, and a notebook's counts into it. */
export function RecordsPage() {
  const mayExport = useMay('own')
  const mayImport = useMay('manage')
  return (
    <Page title="Records in and out" lead="For a spreadsheet, and from one">
      {!mayImport && <Notice>An owner takes records out; an owner or a caretaker brings counts in.</Notice>}
      {mayExport && <Export />}
      {mayImport && <Import />}
    </Page>
  )
}
