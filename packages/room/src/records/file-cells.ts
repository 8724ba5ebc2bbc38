import { localDate, localTime } from '@fryward/husbandry'
import type { RecordFileQuery } from '@fryward/shared'
import { stringify } from 'csv-stringify/sync'

export type Cell = string | number | null | undefined
export type FileRow = readonly Cell[]

/** Figures that a measured value is told with; what a syringe or a count says has no more. */
const mostFigures = 6

/**
 * Rows as CSV (RFC 4180) that a spreadsheet opens as it is: text that it would take for a formula behind an apostrophe,
 * numbers with the decimal mark asked for.
 */
export function csvOf(rows: readonly FileRow[], decimal: RecordFileQuery['decimal']): string {
  const mark = decimal === 'comma' ? ',' : '.'
  const toText = (cell: Cell): string => {
    if (cell === null || cell === undefined) return ''
    return typeof cell === 'string' ? cell : String(Number(cell.toPrecision(mostFigures))).replace('.', mark)
  }
  return stringify(
    rows.map((row) => row.map(toText)),
    { delimiter: decimal === 'comma' ? ';' : ',', record_delimiter: '\r\n', escape_formulas: true },
  )
}

/** The mark by which a spreadsheet knows UTF-8. */
export const utf8Mark = '\ufeff'

/** Date and time of day as the room's clock showed them, in the form that every spreadsheet reads as such. */
export const whenCells = (timeZone: string, at: Date): [string, string] => {
  const said = { timeZone, at: at.toISOString() }
  return [localDate(said), localTime(said)]
}
