import type { PlainTime } from '@fryward/shared'

/** Hours alone, hours and minutes with a colon or a point between, or three to four digits in one: 7, 7:30, 19.30, 730. */
const shapes = [/^(\d{1,2})(?:([ap])m)?$/, /^(\d{1,2})[:.,h](\d{2})(?:([ap])m)?$/, /^(\d{1,2})(\d{2})(?:([ap])m)?$/]

/** What a person typed as a time of day, as HH:MM; undefined when it is none. */
export function parseTime(text: string): PlainTime | undefined {
  const clean = text
    .replaceAll(/[\s.]*([ap])\.?m\.?$/gi, '$1m')
    .replaceAll(/\s/g, '')
    .toLowerCase()
  for (const shape of shapes) {
    const [, hours, ...rest] = shape.exec(clean) ?? []
    if (hours === undefined) continue
    const half = rest.find((part) => part === 'a' || part === 'p')
    const minutes = rest.find((part) => part !== undefined && part !== half) ?? '0'
    const hour = toHour(Number(hours), half)
    if (hour !== undefined && Number(minutes) < 60)
      return `${String(hour).padStart(2, '0')}:${minutes.padStart(2, '0')}`
  }
  return undefined
}

/** 12 am is midnight, 12 pm noon. */
function toHour(hours: number, half: string | undefined): number | undefined {
  if (half === undefined) return hours < 24 ? hours : undefined
  if (hours < 1 || hours > 12) return undefined
  return (hours % 12) + (half === 'p' ? 12 : 0)
}
