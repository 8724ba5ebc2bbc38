// No request of the contract nests deeper than 6, and the largest (a room set up with a hundred vessels) holds about
// 1,200 values: what goes beyond these is no form of ours, and working it through would hold everybody else up.
const maximumDepth = 30
const mostValues = 5000

/** What makes a value that came as JSON unfit to be looked at any further, as the end of a sentence; null when nothing does. */
export function flawIn(value: unknown): string | null {
  const open: { value: unknown; depth: number }[] = [{ value, depth: 0 }]
  let seen = 0
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    const { value, depth } = next
    if (typeof value === 'string') {
      if (!isKeepable(value)) return unkeepable
      continue
    }
    if (value === null || typeof value !== 'object') continue
    if (depth === maximumDepth) return `is nested deeper than ${maximumDepth} levels; no request is.`
    for (const key of Object.keys(value)) {
      seen += 1
      if (seen > mostValues) return `holds more than ${mostValues} values; no request does.`
      if (!isKeepable(key)) return unkeepable
      open.push({ value: (value as Record<string, unknown>)[key], depth: depth + 1 })
    }
  }
  return null
}

const unkeepable =
  'holds a character that cannot be kept (a zero byte or half of a character pair). Take it out and send it again.'

/** Whether PostgreSQL can hold a text. */
const isKeepable = (text: string): boolean => !text.includes('\u0000') && text.isWellFormed()
