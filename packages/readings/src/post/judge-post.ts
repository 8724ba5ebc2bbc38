import type { GaugeQuantity, RefusedReading } from '@fryward/shared'
import type { KeptReading } from '../keeping/kept-reading.ts'
import { inKeptUnit, quantities } from '../quantities.ts'
import type { Post, PostedReading } from './posted.ts'

export type KnownGauge = { channel: number; quantity: GaugeQuantity; offset: number }
/** The gauges of a device, by what it calls them. */
export type KnownGauges = ReadonlyMap<string, KnownGauge>

/** What of a post is kept, and every reading that is not, in the order of the post. */
export function judgePost(post: Post, gauges: KnownGauges): { kept: KeptReading[]; refused: RefusedReading[] } {
  const kept: KeptReading[] = []
  const refused = [...post.refused]
  for (const reading of post.readings) {
    const judged = judge(reading, gauges.get(reading.gauge))
    if ('reason' in judged) refused.push(judged)
    else kept.push(judged)
  }
  refused.sort((one, other) => one.index - other.index)
  return { kept, refused }
}

function judge(
  { index, gauge, at, value, unit }: PostedReading,
  known: KnownGauge | undefined,
): KeptReading | RefusedReading {
  const refuse = (reason: RefusedReading['reason'], detail: string) => ({ index, gauge, reason, detail })
  if (!known) return refuse('unknown_gauge', 'This device has no gauge of that name. Add it on its page first.')
  const inUnit = inKeptUnit(known.quantity, value, unit)
  if (inUnit === null) {
    const units = Object.keys(quantities[known.quantity].from).join(', ')
    return refuse('wrong_unit', `A gauge of ${known.quantity} reads in one of: ${units}.`)
  }
  const { lowest, highest } = quantities[known.quantity]
  if (inUnit < lowest || inUnit > highest)
    return refuse('beyond_sense', `No ${known.quantity} is outside ${lowest} to ${highest}. Look at the probe.`)
  return { channel: known.channel, at, value: inUnit + known.offset }
}
