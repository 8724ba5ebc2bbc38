'use client'

import { sayMoment, sayNumber } from '@fryward/words'
import { FoldedTable } from '@/base/charts/FoldedTable.tsx'
import { useVoice } from '@/base/room/room-context.tsx'
import type { PreyCount } from './prey-chart.ts'
import { sayPreyKind } from './say-prey.ts'

/** The counts of prey for those who read, newest first. */
export function PreyTable({ counts, now }: { counts: PreyCount[]; now: Date }) {
  const voice = useVoice()
  return (
    <FoldedTable
      label="Counts of prey as a table"
      headings={['When', 'What', 'Per mL', 'Its samples']}
      rows={counts.toReversed().map((count) => ({
        key: count.factId,
        cells: [
          sayMoment(count.at, now, voice),
          sayPreyKind(count.of),
          sayNumber(count.perMl, voice),
          count.samples === 1
            ? 'one'
            : `${sayNumber(count.lowestPerMl, voice)} to ${sayNumber(count.highestPerMl, voice)} in ${count.samples}`,
        ],
      }))}
    />
  )
}
