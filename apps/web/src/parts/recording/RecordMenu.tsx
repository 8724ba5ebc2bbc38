'use client'

import { Suspense, useEffect, useRef, useState } from 'react'
import { draftKeysUnder, readDrafts } from '@/base/outbox/drafts.ts'
import { useQueue } from '@/base/outbox/queue-state.ts'
import { useDraftKey } from '@/base/outbox/use-draft-key.ts'
import { useMay } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { late } from '@/base/ui/late.ts'
import { Card, Section } from '@/base/ui/Page.tsx'
import { usePreload } from '@/base/ui/use-preload.ts'
import { type RecordKind, recordKindsOf } from '@/parts/facts/record-kinds.ts'
import type { Thing } from '@/parts/things/use-things.ts'
import { factPlace, recordChoices } from './record-choices.ts'
import styles from './records.module.css'

const loadForm = () => import('./RecordForm.tsx')
const RecordForm = late(loadForm, 'RecordForm')

/** Anything seen or done without a task: a count at noon, a loss found, a harvest for other fish. */
export function RecordMenu({ subject }: { subject: Thing }) {
  const may = useMay('record')
  const [chosen, choose] = useState<RecordKind | null>(null)
  usePreload(loadForm)
  useBegun(subject, (kind) => choose((last) => last ?? kind))
  if (!may) return null
  const choices = recordChoices(subject.kind)
  const choice = choices.find((one) => one.kind === chosen)
  return (
    <Section title="Record something">
      <div className={styles.menu}>
        {choices.map((one) => (
          <Button
            key={one.kind}
            variant="default"
            aria-pressed={one.kind === chosen}
            onClick={() => choose(one.kind === chosen ? null : one.kind)}
          >
            {one.label}
          </Button>
        ))}
      </div>
      {choice && (
        <Card>
          <Suspense>
            <RecordForm key={choice.kind} subject={subject} kind={choice.kind} onClose={() => choose(null)} />
          </Suspense>
        </Card>
      )}
    </Section>
  )
}

/** Opens again what was begun here and not sent, or sent and refused: the newest of it, unless something is open. */
function useBegun(subject: Thing, open: (kind: RecordKind) => void): void {
  const place = useDraftKey(factPlace(subject.id, ''))
  const { refused } = useQueue()
  const show = useRef(open)
  useEffect(() => {
    if (place === undefined && refused.length === 0) return
    void readDrafts().then(() => {
      const kind = place && draftKeysUnder(place)[0]?.slice(place.length)
      const found = recordKindsOf[subject.kind].find((one) => one === kind)
      if (found) show.current(found)
    })
  }, [place, refused, subject.kind])
}
