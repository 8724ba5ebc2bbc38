'use client'

import type { Id } from '@fryward/shared'
import type { UseQueryResult } from '@tanstack/react-query'
import type { ReactNode } from 'react'
import { PhotoStrip } from '@/features/photos/PhotoStrip.tsx'
import { History } from '@/features/records/History.tsx'
import { RecordMenu } from '@/features/records/RecordMenu.tsx'
import { Bones } from '@/ui/Bones.tsx'
import { Loaded } from '@/ui/Loaded.tsx'
import { Notice } from '@/ui/Notice.tsx'
import { Page } from '@/ui/Page.tsx'
import { subjectLabels } from '@/words/labels.ts'
import type { Thing } from './use-things.ts'
import { VesselGlyph } from './VesselGlyph.tsx'
import styles from './vessels.module.css'

type Named = { id: Id; name: string; endedAt?: string | null }
type Props<T extends Named> = {
  kind: Thing['kind']
  id: Id
  query: UseQueryResult<T[]>
  lead?: (thing: T) => ReactNode
  children: (thing: T) => ReactNode
}

/** The frame of the page of any thing of the room: its drawing and name, its own part, what to record, its history. */
export function VesselPage<T extends Named>({ kind, id, query, lead, children }: Props<T>) {
  const thing = query.data?.find((one) => one.id === id)
  return (
    <Page
      title={
        <span className={styles.title}>
          <VesselGlyph kind={kind} id={id} size={52} />
          {thing?.name ?? subjectLabels[kind]}
        </span>
      }
      lead={thing && lead?.(thing)}
    >
      <Loaded
        query={query}
        skeleton={<Bones heights={[12, 8, 5, 5]} />}
        what={`The ${subjectLabels[kind].toLowerCase()}`}
      >
        {() =>
          thing === undefined ? (
            <Notice title="Not in this room">
              <p>The address may be old. The room page lists everything that lives here.</p>
            </Notice>
          ) : (
            <>
              {thing.endedAt && <Notice>This {subjectLabels[kind].toLowerCase()} has ended; its history stays.</Notice>}
              {children(thing)}
              {!thing.endedAt && <RecordMenu subject={{ id, kind, name: thing.name }} />}
              <PhotoStrip subjectId={id} name={thing.name} canAdd={!thing.endedAt} />
              <History subjectId={id} />
            </>
          )
        }
      </Loaded>
    </Page>
  )
}
