import type { Culture } from '@fryward/shared'
import { serverNow } from '@/base/api/server-clock.ts'
import { sayMoment } from '@/base/dates/say.ts'
import { formatNumber } from '@/base/quantities/format-number.ts'

/** The drawing's text twin: "280 per mL, 06:50", or "about 280 per mL" once only the estimate can say. */
export function sayDensity({ densityNow }: Culture, timeZone: string): string {
  if (densityNow === null) return 'not counted yet'
  const number = `${formatNumber(densityNow.perMl)} per mL`
  const counted = sayMoment(densityNow.countedAt, serverNow(), timeZone)
  return densityNow.isEstimated ? `about ${number}, counted ${counted}` : `${number}, ${counted}`
}
