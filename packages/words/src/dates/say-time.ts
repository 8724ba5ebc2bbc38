import type { Instant, PlainTime } from '@fryward/shared'
import type { NumberVoice, Voice } from '../voice.ts'
import { mannerOf, partsOf } from './formats.ts'

/** "07:40", or "7:40 am" where people have a clock of twelve hours. */
export function sayTime(at: Instant | Date, { locale, timeZone }: Pick<Voice, 'locale' | 'timeZone'>): string {
  const { isTwelveHours } = mannerOf(locale)
  const options = isTwelveHours
    ? ({ hour: 'numeric', minute: '2-digit', hourCycle: 'h12' } as const)
    : ({ hour: '2-digit', minute: '2-digit', hourCycle: 'h23' } as const)
  const part = partsOf(new Date(at), { locale, timeZone, options })
  const time = `${part('hour')}:${part('minute')}`
  return isTwelveHours ? `${time}\u00a0${part('dayPeriod').toLowerCase()}` : time
}

/** A time of the room's own clock, which knows no date. */
export const sayPlainTime = (time: PlainTime, { locale }: NumberVoice): string =>
  sayTime(`2000-01-01T${time}:00Z`, { locale, timeZone: 'UTC' })
