import type { PlainDate } from '@fryward/shared'
import { Temporal } from 'temporal-polyfill'

/** A date as people name a clutch by it: 6 Nov. */
export function dayMonth(date: PlainDate): string {
  return Temporal.PlainDate.from(date).toLocaleString('en-GB', { day: 'numeric', month: 'short' })
}
