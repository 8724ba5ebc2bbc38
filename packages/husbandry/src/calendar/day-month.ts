import type { PlainDate } from '@fryward/shared'
import { Temporal } from 'temporal-polyfill'
import { remembered } from '../memo/remembered.ts'

const said = remembered<string>(400)

/** A date as people name a clutch by it: 6 Nov. */
export const dayMonth = (date: PlainDate): string =>
  said(date, () => Temporal.PlainDate.from(date).toLocaleString('en-GB', { day: 'numeric', month: 'short' }))
