import type { CultureOutlook } from '@fryward/shared'
import { sayDate, sayNumber, sayTime, toPlainDate } from '@fryward/words'
import { FoldedTable } from '@/base/charts/FoldedTable.tsx'
import { useVoice } from '@/base/room/room-context.tsx'

/** The counts and the forecast for those who read. */
export function OutlookTable({ outlook, timeZone }: { outlook: CultureOutlook; timeZone: string }) {
  const voice = useVoice()
  if (outlook.counts.length === 0) return null
  const day = (at: string) => sayDate(toPlainDate(at, timeZone), voice)
  return (
    <FoldedTable
      label="Counts and forecast as a table"
      headings={['When', 'Per mL', 'Between', 'Eggs a female']}
      rows={[
        ...outlook.counts.map((count) => ({
          key: count.factId,
          cells: [
            `${day(count.at)} ${sayTime(count.at, voice)}`,
            sayNumber(count.densityPerMl, voice),
            `${sayNumber(count.lowerPerMl, voice)} and ${sayNumber(count.upperPerMl, voice)}`,
            count.eggRatio === null ? '–' : sayNumber(count.eggRatio, voice),
          ],
        })),
        ...outlook.ahead.map((point) => ({
          key: point.at,
          cells: [
            `${day(point.at)}, forecast`,
            sayNumber(point.p50, voice),
            `${sayNumber(point.p10, voice)} and ${sayNumber(point.p90, voice)}`,
            '–',
          ],
        })),
      ]}
    />
  )
}
