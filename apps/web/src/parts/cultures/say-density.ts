import type { Culture } from '@fryward/shared'
import { sayMoment, sayNumber, type Voice } from '@fryward/words'
import { serverNow } from '@/base/api/server-clock.ts'

/** The drawing's text twin: "280 per mL, 06:50", or "about 280 per mL" once only the estimate can say. */
export function sayDensity({ densityNow }: Culture, voice: Voice): string {
  if (densityNow === null) return 'not counted yet'
  const number = `${sayNumber(densityNow.perMl, voice)} per mL`
  const counted = sayMoment(densityNow.countedAt, serverNow(), voice)
  return densityNow.isEstimated ? `about ${number}, counted ${counted}` : `${number}, ${counted}`
}
