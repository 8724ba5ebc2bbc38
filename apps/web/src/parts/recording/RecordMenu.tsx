'use client'

import { lazy, Suspense, useState } from 'react'
import { useMay } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { Card, Section } from '@/base/ui/Page.tsx'
import type { RecordKind } from '@/parts/facts/record-kinds.ts'
import type { Thing } from '@/parts/things/use-things.ts'
import { recordChoices } from './record-choices.ts'
import styles from './records.module.css'

const RecordForm = lazy(() => import('./RecordForm.tsx').then((part) => ({ default: part.RecordForm })))

/** Anything seen or done without a task: a count at noon, a loss found, a harvest for other fish. */
export function RecordMenu({ subject }: { subject: Thing }) {
  const may = useMay('record')
  const [chosen, choose] = useState<RecordKind | null>(null)
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
