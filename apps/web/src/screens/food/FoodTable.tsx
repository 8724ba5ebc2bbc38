import type { FoodOutlook } from '@fryward/shared'
import { sayArtemiaDay, sayDate, sayNumber, sayPercent } from '@fryward/words'
import { FoldedTable } from '@/base/charts/FoldedTable.tsx'
import { useVoice } from '@/base/room/room-context.tsx'
import { type BandDay, hatchNightsOf } from './food-nights.ts'

/** The two bands, the nights, the chance and the Artemia of each day for those who read. */
export function FoodTable({ days, outlook }: { days: readonly BandDay[]; outlook: FoodOutlook }) {
  const voice = useVoice()
  const percent = (share: number) => sayPercent(share, voice)
  const nights = new Map(hatchNightsOf(outlook).map((night) => [night.date, night]))
  const between = ({ p10, p50, p90 }: BandDay['wanted']) =>
    p90 === 0 ? '–' : `${sayNumber(p50, voice)} (${sayNumber(p10, voice)} to ${sayNumber(p90, voice)})`
  const hatches = outlook.hatches ?? []
  const artemia = new Map(
    outlook.days.flatMap(({ date, artemia: on }) => {
      const said = on && sayArtemiaDay(on, { hatches, voice })
      return said ? [[date, said] as const] : []
    }),
  )
  const headings = ['Day', 'Rotifers wanted', 'Rotifers there could be', 'Falls short', 'Hatches that night']
  return (
    <FoldedTable
      label="Food and mouths as a table"
      headings={artemia.size > 0 ? [...headings, 'Artemia nauplii'] : headings}
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
            ...(artemia.size > 0 ? [artemia.get(day.date) ?? '–'] : []),
          ],
        }
      })}
    />
  )
}
