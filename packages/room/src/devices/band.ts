import { quantities } from '@fryward/readings'
import type { GaugeQuantity } from '@fryward/shared'
import { invalid } from '../errors.ts'

/** Refuses a band whose ends are the wrong way round, or which no water has. */
export function assertBand(
  quantity: GaugeQuantity,
  { low = null, high = null }: { low?: number | null | undefined; high?: number | null | undefined },
): void {
  const { lowest, highest } = quantities[quantity]
  for (const [path, value] of [
    ['low', low],
    ['high', high],
  ] as const)
    if (value !== null && (value < lowest || value > highest))
      throw invalid(path, `Give a limit between ${lowest} and ${highest}.`, value)
  if (low !== null && high !== null && low >= high)
    throw invalid('high', 'The upper limit is above the lower one.', high)
}
