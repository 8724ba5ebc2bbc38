'use client'

import type { Gauge, GaugeSeries } from '@fryward/shared'
import { Button } from '@/base/ui/Button.tsx'
import { seriesCsv } from './series-csv.ts'

/** Saves what a chart shows as a file. */
export function SaveCsv({ gauge, series }: { gauge: Gauge; series: GaugeSeries }) {
  const save = () => {
    const address = URL.createObjectURL(new Blob([seriesCsv(gauge, series)], { type: 'text/csv' }))
    const link = document.createElement('a')
    link.href = address
    link.download = `${gauge.subject.name} ${gauge.key} ${series.from.slice(0, 10)}.csv`
    link.click()
    URL.revokeObjectURL(address)
  }
  return (
    <div>
      <Button variant="subtle" aria-label={`Save as CSV: ${gauge.key}`} onClick={save}>
        Save as CSV
      </Button>
    </div>
  )
}
