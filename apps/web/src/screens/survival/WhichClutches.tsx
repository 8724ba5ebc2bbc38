'use client'

import { numberFormat } from '@fryward/words'
import { TextInput } from '@mantine/core'
import { Row } from '@/base/forms/Row.tsx'
import { useRoom } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { survivalFileAddress } from '@/parts/survival/queries.ts'
import styles from './survival.module.css'

export type LaidBetween = { from?: string; to?: string }

/** Which clutches by the date of their eggs, and the ways to take the review along. */
export function WhichClutches({ range, onRange }: { range: LaidBetween; onRange: (range: LaidBetween) => void }) {
  const room = useRoom()
  const isWrongWay = range.from !== undefined && range.to !== undefined && range.from > range.to
  const decimal = numberFormat(room.locale, {}).format(1.5).includes(',') ? 'comma' : 'point'
  const dated = (name: 'from' | 'to', value: string) => {
    const { [name]: _, ...rest } = range
    onRange(value === '' ? rest : { ...rest, [name]: value })
  }
  return (
    <div className={styles.controls}>
      <Row>
        <TextInput
          type="date"
          label="Laid from"
          value={range.from ?? ''}
          onChange={(event) => dated('from', event.currentTarget.value)}
        />
        <TextInput
          type="date"
          label="Laid until"
          value={range.to ?? ''}
          error={isWrongWay ? 'Take a date that is not before the first.' : undefined}
          onChange={(event) => dated('to', event.currentTarget.value)}
        />
      </Row>
      <div className={styles.ways}>
        <a className={styles.download} href={survivalFileAddress(room.id, { ...range, decimal })} download>
          Download for a spreadsheet
        </a>
        <Button variant="default" onClick={() => window.print()}>
          Print
        </Button>
      </div>
    </div>
  )
}
