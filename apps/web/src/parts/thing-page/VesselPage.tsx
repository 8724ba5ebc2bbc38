'use client'

import type { CareKind, Id } from '@fryward/shared'
import { subjectLabels } from '@fryward/words'
import type { UseQueryResult } from '@tanstack/react-query'
import type { ReactNode } from 'react'
import { useRoom } from '@/base/room/room-context.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { LinkButton } from '@/base/ui/Button.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { Page } from '@/base/ui/Page.tsx'
import { OpenWorries } from '@/parts/hand-over/OpenWorries.tsx'
import { History } from '@/parts/history/History.tsx'
import { PhotoStrip } from '@/parts/photos/PhotoStrip.tsx'
import { RecordMenu } from '@/parts/recording/RecordMenu.tsx'
import { Reopen } from '@/parts/things/Reopen.tsx'
import styles from '@/parts/things/things.module.css'
import type { Thing } from '@/parts/things/use-things.ts'
import { VesselGlyph } from '@/parts/things/VesselGlyph.tsx'

type Named = { id: Id; name: string; version: number; endedAt?: string | null; care?: CareKind }
type Props<T extends Named> = {
  kind: Thing['kind']
  id: Id
  query: UseQueryResult<T[]>
  lead?: (thing: T) => ReactNode
  children: (thing: T) => ReactNode
}

/**
 * The frame of the page of any thing of the room: its drawing and name, its own part and what to record; beside them
 * where there is room, else below, its history.
 */
export function VesselPage<T extends Named>({ kind, id, query, lead, children }: Props<T>) {
  const thing = query.data?.find((one) => one.id === id)
  const word = subjectLabels[kind].toLowerCase()
  return (
    <div className={styles.wide}>
      <Page
        title={
          <span className={styles.title}>
            <VesselGlyph kind={kind} id={id} size={52} />
            {thing?.name ?? subjectLabels[kind]}
          </span>
        }
        // A line is kept for it, so that nothing below moves when it comes.
        lead={thing ? lead?.(thing) : lead && '\u00a0'}
      >
        <Loaded query={query} skeleton={<VesselBones />} what={`The ${word}`}>
          {() =>
            thing === undefined ? (
              <NotHere />
            ) : (
              <div className={styles.columns}>
                <div className={styles.column}>
                  {thing.endedAt && (
                    <Notice title={`This ${word} has ended; its history stays.`}>
                      <Reopen id={id} name={thing.name} endedAt={thing.endedAt} version={thing.version} />
                    </Notice>
                  )}
                  {!thing.endedAt && <OpenWorries subjectId={id} />}
                  {children(thing)}
                  {!thing.endedAt && <RecordMenu subject={{ id, kind, name: thing.name, care: thing.care }} />}
                  <PhotoStrip subjectId={id} name={thing.name} canAdd={!thing.endedAt} />
                </div>
                <div className={styles.column}>
                  <History subject={{ id, kind }} />
                </div>
              </div>
            )
          }
        </Loaded>
      </Page>
    </div>
  )
}

const VesselBones = () => (
  <div className={styles.columns}>
    <Bones heights={[12, 8, 5, 5]} />
    <Bones heights={[3, 1.4, 9.6, 1.4, 12]} />
  </div>
)

function NotHere() {
  return (
    <Notice title="Not in this room">
      <p>The address may be old. The room page lists everything that lives here.</p>
      <LinkButton href={`/rooms/${useRoom().id}/room`} variant="filled">
        To the room
      </LinkButton>
    </Notice>
  )
}
