import { scaleLinear } from 'd3-scale'

/** About so many lines fit beside a chart of a phone's height. */
const lines = 4

/** From nothing at `floor` up to what has to be seen, rounded up to a whole line; what runs further stays at the edge. */
export function amountScale(highest: number, { floor, ceiling }: { floor: number; ceiling: number }) {
  const scale = scaleLinear().domain([0, highest]).nice(lines).range([floor, ceiling]).clamp(true)
  return { toY: (amount: number) => scale(amount), ticks: scale.ticks(lines) }
}

/** Instants from left to right. Its days are the room's own, so d3's scale of times (the device's or UTC) is not for us. */
export function timeScale(span: { start: Date; end: Date }, { left, right }: { left: number; right: number }) {
  const scale = scaleLinear().domain([span.start.getTime(), span.end.getTime()]).range([left, right])
  return (at: string | Date) => scale(new Date(at).getTime())
}
