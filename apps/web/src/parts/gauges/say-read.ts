import type { Gauge } from '@fryward/shared'
import { sayQuantity, sayShareOfSaturation, type UnitVoice } from '@fryward/words'

/** What a gauge reads; of oxygen the share of saturation beside it: "6.4 mg/L, 97% of saturation". */
export function sayRead(
  { unit, saturation }: Pick<Gauge, 'unit' | 'saturation'>,
  value: number,
  voice: UnitVoice,
): string {
  const said = sayQuantity({ value, unit }, voice)
  return saturation ? `${said}, ${sayShareOfSaturation(value, saturation, voice)} of saturation` : said
}
