'use client'

import type { ClutchLife } from '@fryward/shared'
import { outcomeLabels, sayDate, sayEnds, sayNumber, sayStage, sayWhole, toPlainDate } from '@fryward/words'
import { FoldedTable } from '@/base/charts/FoldedTable.tsx'
import { useVoice } from '@/base/room/room-context.tsx'
import { foodRows, stageRows } from './life-rows.ts'

const departureLabels = { loss: 'found dead', moved: 'moved away', mixed: 'put with others', ...outcomeLabels } as const

/** The life line for those who read: what happened, oldest first. */
export function LifeTable({ life }: { life: ClutchLife }) {
  const voice = useVoice()
  const numberOn = new Map(life.numbers.map((number) => [number.on, number]))
  const left = (on: string) => {
    const number = numberOn.get(on)
    return number ? (sayEnds(number, voice) ?? 'not known') : ''
  }
  const entries = [
    ...stageRows(life).flatMap(({ stage, seenOn }) =>
      seenOn === null ? [] : [{ on: seenOn, said: sayStage(stage, life.row.care) }],
    ),
    ...life.departures.map(({ on, kind, number, cause }) => ({
      on,
      said: `${sayWhole(number, voice)} ${departureLabels[kind]}${cause === null ? '' : `: ${cause}`}`,
    })),
    ...life.numbers
      .filter(({ isCounted }) => isCounted)
      .map(({ on, atLeast }) => ({ on, said: `counted: ${sayWhole(atLeast ?? 0, voice)}` })),
    ...foodRows(life).flatMap(({ label, spans }) =>
      spans.map(({ from }) => ({ on: from, said: `first fed: ${label}` })),
    ),
    ...life.temperatures.map(({ at, temperatureC }) => ({
      on: toPlainDate(at, voice.timeZone),
      said: `${sayNumber(temperatureC, voice)} °C`,
    })),
  ].sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0))
  return (
    <FoldedTable
      label="The life line as a table"
      headings={['Date', 'What', 'Left that evening']}
      rows={entries.map(({ on, said }, index) => ({
        key: `${on} ${index}`,
        cells: [sayDate(on, voice), said, left(on)],
      }))}
    />
  )
}
