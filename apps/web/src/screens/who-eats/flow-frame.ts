import type { FoodOutlook } from '@fryward/shared'
import { linkHorizontal } from 'd3-shape'

type Day = Pick<FoodOutlook['days'][number], 'gives' | 'eaters'>

/** A culture or an eater as a bar: what flows stands in it from the top, what is missing or left under that. */
export type Bar = { id: string; y: number; height: number; filled: number }
export type Stream = { from: string; to: string; d: string; width: number; animals: number }
export type Flow = { cultures: Bar[]; eaters: Bar[]; streams: Stream[]; height: number }

/** Air between two bars for the words under each, in px. */
export const barGap = 54
const leastBar = 10
const tallest = 190

/** Cultures left and eaters right, each as high as the animals that it gives or wants; a stream as wide as what flows. */
export function flowOf(
  day: Day,
  shown: { cultures: readonly string[]; eaters: readonly string[] },
  sides: { left: number; right: number },
): Flow {
  const given = (id: string) => sum(day.gives.filter(({ cultureId }) => cultureId === id).map(({ animals }) => animals))
  const wantedBy = (id: string) => day.eaters.find((each) => each.id === id)?.wanted ?? 0
  const gotBy = (id: string) =>
    Math.min(wantedBy(id), sum(day.gives.filter(({ eaterId }) => eaterId === id).map(({ animals }) => animals)))
  const most = Math.max(1, sum(shown.eaters.map(wantedBy)), sum(shown.cultures.map(given)))
  const px = (animals: number) => (animals / most) * tallest
  const cultures = stacked(shown.cultures.map((id) => ({ id, height: px(given(id)), filled: px(given(id)) })))
  const eaters = stacked(shown.eaters.map((id) => ({ id, height: px(wantedBy(id)), filled: px(gotBy(id)) })))
  const leaves = new Map<string, number>()
  const arrives = new Map<string, number>()
  const path = linkHorizontal<unknown, [number, number]>()
  const streams = day.gives.flatMap(({ cultureId, eaterId, animals }) => {
    const from = cultures.find(({ id }) => id === cultureId)
    const to = eaters.find(({ id }) => id === eaterId)
    if (!from || !to || animals <= 0) return []
    const width = Math.max(1.5, px(animals))
    const y = (taken: Map<string, number>, bar: Bar) => {
      const used = taken.get(bar.id) ?? 0
      taken.set(bar.id, used + width)
      return bar.y + used + width / 2
    }
    const d = path({ source: [sides.left, y(leaves, from)], target: [sides.right, y(arrives, to)] }) ?? ''
    return [{ from: cultureId, to: eaterId, d, width, animals }]
  })
  return { cultures, eaters, streams, height: Math.max(heightOf(cultures), heightOf(eaters)) }
}

const sum = (values: readonly number[]): number => values.reduce((all, value) => all + value, 0)

function stacked(bars: readonly Omit<Bar, 'y'>[]): Bar[] {
  let y = 0
  return bars.map((bar) => {
    const placed = { ...bar, height: Math.max(leastBar, bar.height), y }
    y += placed.height + barGap
    return placed
  })
}

const heightOf = (bars: readonly Bar[]): number => {
  const last = bars.at(-1)
  return last ? last.y + last.height + barGap : 0
}
