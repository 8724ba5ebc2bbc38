'use client'

import { lazy, Suspense, useState } from 'react'
import { useMay } from '@/features/rooms/room-context.tsx'
import type { Thing } from '@/features/vessels/use-things.ts'
import { Button } from '@/ui/Button.tsx'
import { Card, Section } from '@/ui/Page.tsx'
import { type RecordKind, recordChoices } from './record-choices.ts'
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
