import type { ClutchLife, PlainDate } from '@fryward/shared'
import { addDays, daysBetween } from '@fryward/words'
import { scaleLinear } from 'd3-scale'
import { amountScale } from '@/base/charts/scales.ts'
import { type LifeTops, lifeMargin } from './life-lanes.ts'

export type LifeFrame = {
  /** Noon of a date. */
  x: (date: PlainDate) => number
  /** Where in its day an instant lies matters little on a line of weeks. */
  number: { y: (animals: number) => number; ticks: number[] }
  loss: (animals: number) => number
  temperature: { y: (temperatureC: number) => number; least: number; most: number } | null
  ticks: { date: PlainDate; ageDays: number | null }[]
  right: number
}

export type LifeSpan = { from: PlainDate; to: PlainDate }

/** From the laying (or the hatch) to the last that is known of it; ahead of that as far as a stage is expected. */
export function lifeSpan(life: ClutchLife, from: PlainDate): LifeSpan {
  const isOver = life.row.numberNow === 0
  const last = life.numbers.at(-1)?.on ?? from
  const ahead = isOver ? [] : [life.today, ...life.expected.map((stage) => stage.to)]
  const dates = [last, ...life.departures.map(({ on }) => on), ...ahead].sort()
  const to = dates.at(-1) ?? last
  return { from, to: to > from ? to : addDays(from, 1) }
}

/** About so many dates fit under a line of a phone's width. */
const labels = 5
const steps = [1, 2, 5, 10, 20, 50, 100, 200]

export function lifeFrame(
  life: ClutchLife,
  { width, tops, span }: { width: number; tops: LifeTops; span: LifeSpan },
): LifeFrame {
  const right = width - lifeMargin.right
  const days = daysBetween(span.from, span.to)
  const toX = scaleLinear().domain([0, days]).range([lifeMargin.left, right]).clamp(true)
  const numbers = life.numbers.flatMap(({ atLeast, atMost }) => [atLeast ?? 0, atMost ?? 0])
  const { toY, ticks } = amountScale(Math.max(1, ...numbers), { floor: tops.floor, ceiling: tops.numbers })
  const losses = scaleLinear()
    .domain([0, Math.max(1, ...lossesByDate(life).map(({ number }) => number))])
    .range([3, tops.lossesEnd - tops.losses])
  return {
    x: (date) => toX(daysBetween(span.from, date)),
    number: { y: toY, ticks },
    loss: (animals) => losses(animals),
    temperature: temperatureScale(life, tops),
    ticks: dateTicks(life, { ...span, days }),
    right,
  }
}

function dateTicks(life: ClutchLife, { from, to, days }: LifeSpan & { days: number }): LifeFrame['ticks'] {
  const step = steps.find((size) => days / size <= labels) ?? 365
  const zero = life.row.bornOn ?? from
  const first = Math.ceil(daysBetween(zero, from) / step) * step
  const ages = Array.from(
    { length: Math.floor((daysBetween(zero, to) - first) / step) + 1 },
    (_, i) => first + i * step,
  )
  return ages.map((age) => ({ date: addDays(zero, age), ageDays: life.row.bornOn === null ? null : age }))
}

/** A little more than what was measured and set, so that a steady tank does not look like a storm. */
const leastSpanC = 3

function temperatureScale(life: ClutchLife, tops: LifeTops): LifeFrame['temperature'] {
  const all = [
    ...life.temperatures.map(({ temperatureC }) => temperatureC),
    ...life.setPoints.map(({ temperatureC }) => temperatureC),
  ]
  if (all.length === 0) return null
  const [low, high] = [Math.min(...all), Math.max(...all)]
  const spare = Math.max(0.5, (leastSpanC - (high - low)) / 2)
  const [least, most] = [Math.floor(low - spare), Math.ceil(high + spare)]
  const scale = scaleLinear().domain([least, most]).range([tops.temperatureEnd, tops.temperature])
  return { y: (temperatureC) => scale(temperatureC), least, most }
}

/** Dead of a day as one number. */
export function lossesByDate({ departures }: Pick<ClutchLife, 'departures'>): { on: PlainDate; number: number }[] {
  const sums = new Map<PlainDate, number>()
  for (const { on, kind, number } of departures) if (kind === 'loss') sums.set(on, (sums.get(on) ?? 0) + number)
  return [...sums].map(([on, number]) => ({ on, number }))
}
