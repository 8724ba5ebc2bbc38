/** Hours alone, hours and minutes with a colon or a point between, or three to four digits in one: 7, 7:30, 19.30, 730. */
const shapes = [/^(\d{1,2})$/, /^(\d{1,2})[:.,h](\d{2})$/, /^(\d{1,2})(\d{2})$/]

/** What a person typed as a time of day, as HH:MM; undefined when it is none. */
export function parseTime(text: string): string | undefined {
  const clean = text.replaceAll(/\s/g, '').toLowerCase()
  for (const shape of shapes) {
    const [, hours, minutes = '0'] = shape.exec(clean) ?? []
    if (hours !== undefined && Number(hours) < 24 && Number(minutes) < 60)
      return `${hours.padStart(2, '0')}:${minutes.padStart(2, '0')}`
  }
  return undefined
}
