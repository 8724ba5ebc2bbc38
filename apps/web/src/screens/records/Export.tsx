'use client'

import { type RecordFile, recordFiles } from '@fryward/shared'
import { addDays, numberFormat, toPlainDate } from '@fryward/words'
import { TextInput } from '@mantine/core'
import { useState } from 'react'
import { serverNow } from '@/base/api/server-clock.ts'
import { Row } from '@/base/forms/Row.tsx'
import { useRoom } from '@/base/room/room-context.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { Card, Section } from '@/base/ui/Page.tsx'
import { recordFileAddress } from '@/parts/records/queries.ts'
import styles from './records.module.css'

const labels = {
  counts: 'Counts',
  feedings: 'Feedings',
  losses: 'Losses',
  clutches: 'Clutches',
  tasks: 'Tasks, and what became of them',
} as const satisfies Record<RecordFile, string>

const daysAtFirst = 30

/** A file for each kind of record, between two days. */
export function Export() {
  const room = useRoom()
  const [range, setRange] = useState(() => {
    const to = toPlainDate(serverNow(), room.timeZone)
    return { from: addDays(to, -daysAtFirst), to }
  })
  const decimal = numberFormat(room.locale, {}).format(1.5).includes(',') ? 'comma' : 'point'
  const isComplete = range.from !== '' && range.to !== ''
  const isWrongWay = isComplete && range.from > range.to
  return (
    <Section title="Take records out">
      <Card>
        <p>
          Files that a spreadsheet opens as they are: a line a record, dates and times by the clock of the room. Each
          number has its unit in the name of its column, or for tasks beside it, as this room reads them. What was
          struck out is left out.
        </p>
        <Row>
          <TextInput
            type="date"
            label="From"
            value={range.from}
            onChange={(event) => setRange({ ...range, from: event.currentTarget.value })}
          />
          <TextInput
            type="date"
            label="Until, that day too"
            value={range.to}
            onChange={(event) => setRange({ ...range, to: event.currentTarget.value })}
          />
        </Row>
        {isWrongWay && (
          <Notice tone="worry" title="The first day is after the last. Choose them the other way round." />
        )}
        {isComplete && !isWrongWay && (
          <ul className={styles.files}>
            {recordFiles.map((what) => (
              <li key={what}>
                <a className={styles.file} href={recordFileAddress(room.id, what, { ...range, decimal })} download>
                  {labels[what]}
                </a>
              </li>
            ))}
          </ul>
        )}
      </Card>
    </Section>
  )
}
