'use client'

import { FoldedTable } from '@/base/charts/FoldedTable.tsx'
import { sayMoment } from '@/base/dates/say.ts'
import { formatNumber } from '@/base/quantities/format-number.ts'
import { useRoom } from '@/base/room/room-context.tsx'
import type { PreyCount } from './prey-chart.ts'
import { sayPreyKind } from './say-prey.ts'

/** The counts of prey for those who read, newest first. */
export function PreyTable({ counts, now }: { counts: PreyCount[]; now: Date }) {
  const { timeZone } = useRoom()
  return (
    <FoldedTable
      label="Counts of prey as a table"
      headings={['When', 'What', 'Per mL', 'Its samples']}
      rows={counts.toReversed().map((count) => ({
        key: count.factId,
        cells: [
          sayMoment(count.at, now, timeZone),
          sayPreyKind(count.of),
          formatNumber(count.perMl),
          count.samples === 1
            ? 'one'
            : `${formatNumber(count.lowestPerMl)} to ${formatNumber(count.highestPerMl)} in ${count.samples}`,
        ],
      }))}
    />
  )
}
