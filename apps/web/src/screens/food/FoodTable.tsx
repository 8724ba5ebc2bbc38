import type { FoodOutlook } from '@fryward/shared'
import { sayDate, sayNumber, sayPercent } from '@fryward/words'
import { FoldedTable } from '@/base/charts/FoldedTable.tsx'
import { useVoice } from '@/base/room/room-context.tsx'
import { type BandDay, hatchNightsOf } from './food-nights.ts'

/** The two bands, the nights and the chance of each day for those who read. */
export function FoodTable({ days, outlook }: { days: readonly BandDay[]; outlook: FoodOutlook }) {
  const voice = useVoice()
  const percent = (share: number) => sayPercent(share, voice)
  const nights = new Map(hatchNightsOf(outlook).map((night) => [night.date, night]))
  const between = ({ p10, p50, p90 }: BandDay['wanted']) =>
    p90 === 0 ? '–' : `${sayNumber(p50, voice)} (${sayNumber(p10, voice)} to ${sayNumber(p90, voice)})`
  return (
    <FoldedTable
      label="Food and mouths as a table"
      headings={['Day', 'Rotifers wanted', 'Rotifers there could be', 'Falls short', 'Hatches that night']}
      rows={days.map((day) => {
        const night = nights.get(day.date)
        return {
          key: day.date,
          cells: [
            sayDate(day.date, voice),
            between(day.wanted),
            between(day.couldGive),
            percent(day.chanceShort),
            night ? `${percent(night.probability)}: ${night.names.join(', ')}` : '–',
          ],
        }
      })}
    />
  )
}
