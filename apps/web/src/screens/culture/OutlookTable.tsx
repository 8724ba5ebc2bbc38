import type { CultureOutlook } from '@fryward/shared'
import { FoldedTable } from '@/base/charts/FoldedTable.tsx'
import { sayDate, sayTime, toPlainDate } from '@/base/dates/say.ts'
import { formatNumber } from '@/base/quantities/format-number.ts'

/** The counts and the forecast for those who read. */
export function OutlookTable({ outlook, timeZone }: { outlook: CultureOutlook; timeZone: string }) {
  if (outlook.counts.length === 0) return null
  const day = (at: string) => sayDate(toPlainDate(at, timeZone))
  return (
    <FoldedTable
      label="Counts and forecast as a table"
      headings={['When', 'Per mL', 'Between', 'Eggs a female']}
      rows={[
        ...outlook.counts.map((count) => ({
          key: count.factId,
          cells: [
            `${day(count.at)} ${sayTime(count.at, timeZone)}`,
            formatNumber(count.densityPerMl),
            `${formatNumber(count.lowerPerMl)} and ${formatNumber(count.upperPerMl)}`,
            count.eggRatio === null ? '–' : formatNumber(count.eggRatio),
          ],
        })),
        ...outlook.ahead.map((point) => ({
          key: point.at,
          cells: [
            `${day(point.at)}, forecast`,
            formatNumber(point.p50),
            `${formatNumber(point.p10)} and ${formatNumber(point.p90)}`,
            '–',
          ],
        })),
      ]}
    />
  )
}
