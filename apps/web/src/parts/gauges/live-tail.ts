import type { Gauge, GaugeSeries } from '@fryward/shared'

/** A series with the newest reading at its end, where that came after the series was asked for. */
export function withTail(series: GaugeSeries, latest: Gauge['latest']): GaugeSeries {
  const last = series.points.at(-1)
  if (!latest || latest.at > series.to || latest.at < series.from) return series
  // What lies in the last step is counted in it.
  if (last && Date.parse(latest.at) < Date.parse(last.at) + series.stepS * 1000) return series
  const { at, value } = latest
  return { ...series, points: [...series.points, { at, low: value, high: value, mean: value, number: 1 }] }
}
