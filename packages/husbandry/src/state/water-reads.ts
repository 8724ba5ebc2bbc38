import type { Id, Instant } from '@fryward/shared'
import { epochMillisecondsOf, hourMs } from '../calendar/elapsed.ts'
import type { FactOf } from '../facts/fact.ts'
import { factsOf } from '../snapshot/facts-of.ts'
import type { RoomSnapshot } from '../snapshot/room-snapshot.ts'
import type { TemperatureReading } from '../thermal/index.ts'

/** What both a hand and a gauge can measure. */
export type Measure = 'temperatureC' | 'salinity' | 'pH' | 'oxygenMgPerL'
type MeasuringFact = FactOf<'water_test'> | FactOf<'water_reading'>
export type WaterRead = { fact: MeasuringFact; at: Instant; value: number }

/** Everything that was measured of one quantity of a vessel's water, by hand and by gauges, oldest first. */
export function waterReads(
  snapshot: RoomSnapshot,
  measure: Measure,
  { subjectId, until }: { subjectId: Id; until: Instant },
): WaterRead[] {
  const facts = [...factsOf(snapshot, 'water_test', subjectId), ...factsOf(snapshot, 'water_reading', subjectId)]
  return facts
    .flatMap((fact) => {
      const value = fact.data[measure]
      return value === undefined || fact.at >= until ? [] : [{ fact, at: fact.at, value }]
    })
    .sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0))
}

/** As long before or after, what a gauge read speaks for the water of a test. common practice */
const speaksForMs = 12 * hourMs

/** What a gauge read nearest to a test that left it out; null where none did within half a day. */
export function readBeside(
  snapshot: RoomSnapshot,
  measure: Measure,
  { subjectId, at }: { subjectId: Id; at: Instant },
): WaterRead | null {
  const atMs = epochMillisecondsOf(at)
  const away = (read: WaterRead) => Math.abs(epochMillisecondsOf(read.at) - atMs)
  const near = factsOf(snapshot, 'water_reading', subjectId)
    .flatMap((fact): WaterRead[] => {
      const value = fact.data[measure]
      return value === undefined ? [] : [{ fact, at: fact.at, value }]
    })
    .filter((read) => away(read) <= speaksForMs)
  return near.sort((a, b) => away(a) - away(b))[0] ?? null
}

/** How a link of "why" names who measured: a gauge by what its device calls it. */
export const readBy = ({ fact }: Pick<WaterRead, 'fact'>): string =>
  fact.kind === 'water_reading' ? `by gauge ${fact.data.gaugeKey}` : 'by hand'

// What the thermal forecasts take.
const forecastC = { from: 10, to: 40 }

/** The warmth of a tank for a forecast: each test from when it was made, each mean of a gauge from where it begins. */
export function temperaturesOf(snapshot: RoomSnapshot, tankId: Id): TemperatureReading[] {
  const tests = factsOf(snapshot, 'water_test', tankId).map(({ at, data }) => ({ at, temperatureC: data.temperatureC }))
  const means = factsOf(snapshot, 'water_reading', tankId).map(({ data }) => ({
    at: data.from,
    temperatureC: data.temperatureC,
  }))
  return [...tests, ...means].flatMap(({ at, temperatureC }) =>
    temperatureC === undefined || temperatureC < forecastC.from || temperatureC > forecastC.to
      ? []
      : [{ at, temperatureC }],
  )
}
