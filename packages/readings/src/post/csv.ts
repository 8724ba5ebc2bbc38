import { CsvError, parse } from 'csv-parse/sync'
import { createReader } from './fate.ts'
import { mostReadings, type Post, tooMany, UnreadablePost } from './posted.ts'

/**
 * Lines of gauge, time, value and, where it is not the one that is kept, unit: `t1,2026-03-10T08:00:00Z,25.4`. An empty
 * time is now; a first line of names is passed over. Commas or semicolons; numbers with a decimal point.
 */
export function readCsv(text: string, nowMs: number): Post {
  const lines = linesOf(text)
  if (lines.length > mostReadings) throw new UnreadablePost(tooMany)
  const hasNames = lines[0]?.[0]?.trim().toLowerCase() === 'gauge'
  const reader = createReader({ nowMs })
  for (const [index, [gauge, at, value, unit]] of (hasNames ? lines.slice(1) : lines).entries())
    reader.take({ index, gauge, at: at || null, value: numberOf(value), unit: unit || null })
  return reader.post
}

function linesOf(text: string): string[][] {
  try {
    return parse(text, {
      delimiter: [',', ';'],
      relax_column_count: true,
      skip_empty_lines: true,
      trim: true,
      bom: true,
      to: mostReadings + 2,
    })
  } catch (error) {
    if (error instanceof CsvError) throw new UnreadablePost(`The CSV cannot be read: ${error.message.slice(0, 120)}.`)
    throw error
  }
}

// Number('') is 0, and Number('0x1f') a number too: neither is one that a probe measured.
export const numberOf = (text: string | undefined): number =>
  text !== undefined && /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d{1,3})?$/i.test(text) ? Number(text) : Number.NaN
