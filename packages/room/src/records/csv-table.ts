import { CsvError, parse } from 'csv-parse/sync'
import { invalid } from '../errors.ts'

type Columns<C extends string> = {
  columns: readonly C[]
  /** Other words that notebooks have for the same. */
  alsoCalled: Record<string, C>
  needed: readonly C[]
}
export type Cells<C extends string> = Partial<Record<C, string>>
export type TableLine<C extends string> = { line: number; text: string; cells: Cells<C> }

/**
 * Lines of a CSV file by the names that its first line gives their cells; a semicolon between cells leaves the comma to
 * numbers.
 * @throws RoomError `invalid_input` where the file as a whole cannot be read, with what its first line is to be.
 */
export function readTable<C extends string>(
  text: string,
  { columns, alsoCalled, needed }: Columns<C>,
): { hasDecimalComma: boolean; lines: TableLine<C>[] } {
  const body = text.replace(/^\ufeff/, '')
  const delimiter = delimiterOf(body)
  const [first, ...rows] = split(body, delimiter)
  const names = (first?.record ?? []).map((header) => columnOf(header, { columns, alsoCalled }))
  const missing = needed.filter((name) => !names.includes(name))
  if (missing.length > 0)
    throw invalid(
      'text',
      `The first line names the columns. It lacks: ${missing.join(', ')}. Of these at least ${listed(needed)} are wanted: ${columns.join(', ')}.`,
    )
  const lines = rows.map(({ record, info: { lines: line } }) => ({
    ...{ line, text: record.join(delimiter) },
    cells: Object.fromEntries(names.flatMap((name, i) => (name ? [[name, (record[i] ?? '').trim()]] : []))) as Cells<C>,
  }))
  return { hasDecimalComma: delimiter === ';', lines }
}

/** A number as a file has it; NaN where it is none. */
export const numberIn = (text: string, hasDecimalComma: boolean): number =>
  text.trim() === '' ? Number.NaN : Number(hasDecimalComma ? text.replace(',', '.') : text)

const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`

type Split = { record: string[]; info: { lines: number } }

function split(text: string, delimiter: string): Split[] {
  try {
    return parse(text, { delimiter, info: true, relax_column_count: true, skip_empty_lines: true, trim: true }) as never
  } catch (error) {
    if (!(error instanceof CsvError)) throw error
    throw invalid(
      'text',
      `This cannot be read as a file of lines and cells (line ${error.lines}). Save it as CSV and choose it again.`,
    )
  }
}

/** What parts the cells of the first line; names of columns have none of these in them. */
const delimiterOf = (text: string): string =>
  [';', '\t', ','].find((each) => text.split('\n')[0]?.includes(each)) ?? ','

function columnOf<C extends string>(
  header: string,
  { columns, alsoCalled }: Pick<Columns<C>, 'columns' | 'alsoCalled'>,
): C | undefined {
  const word = header
    .toLowerCase()
    .trim()
    .replaceAll(/[\s-]+/g, '_')
  return columns.find((column) => column === word) ?? alsoCalled[word]
}
