import type { Gauge, GaugeSeries } from '@fryward/shared'

/** A series as a table that any program reads: numbers with a point, in the unit that is kept, times in UTC. */
export function seriesCsv({ key, unit }: Pick<Gauge, 'key' | 'unit'>, { points }: Pick<GaugeSeries, 'points'>): string {
  const rows = points.map(({ at, low, mean, high, number }) => [key, at, low, mean, high, number].join(','))
  return ['gauge,at,low,mean,high,readings', ...rows].join('\r\n').concat(`\r\n# ${unit}\r\n`)
}
