import { timeOf } from '@fryward/husbandry'
import {
  type CountTarget,
  countTargets,
  type Id,
  type Instant,
  type PlainDate,
  type SubjectKind,
} from '@fryward/shared'
import { type Cells, numberIn, readTable } from './csv-table.ts'
import { readDate } from './read-date.ts'

export type Named = { id: Id; kind: SubjectKind; name: string }
export type CountLine = {
  line: number
  text: string
  thing: Named | null
  date: PlainDate | null
  /** What is to be kept, or why it cannot be. */
  meant: { at: Instant; data: CountTyped } | { problem: string }
}
type CountTyped = { of: CountTarget; animals: number[] } & Record<string, unknown>
export type FileOf = { timeZone: string; locale: string; things: readonly Named[] }

const columns = [
  'date',
  'time',
  'thing',
  'of',
  'samples',
  'volume_ml',
  'dilution',
  'eggs',
  'females',
  'length_mm',
] as const
type Column = (typeof columns)[number]
/** Other words that notebooks have for the same. */
const alsoCalled: Record<string, Column> = {
  ...{ day: 'date', culture: 'thing', tank: 'thing', batch: 'thing', name: 'thing', vessel: 'thing' },
  ...{
    count: 'samples',
    counts: 'samples',
    animals: 'samples',
    number: 'samples',
    ml: 'volume_ml',
    volume: 'volume_ml',
  },
}
const needed = ['date', 'thing', 'samples'] as const
const usual: Partial<Record<SubjectKind, CountTarget>> = {
  ...{ culture: 'culture', clutch: 'eggs', larval_batch: 'larvae', juvenile_group: 'juveniles' },
}
// common practice: a round at which most is counted; what a notebook says no time of was counted on it.
const timeUnsaid = '08:00'

/**
 * Reads counts out of a CSV file: which thing, when, and what each line says, or what is wrong with it.
 * @throws RoomError `invalid_input` where the file as a whole cannot be read, with what its first line is to be.
 */
export function readCountsFile(text: string, file: FileOf): CountLine[] {
  const { hasDecimalComma, lines } = readTable(text, { columns, alsoCalled, needed })
  return lines.map(({ line, text, cells }) => ({ line, text, ...readLine(cells, { ...file, hasDecimalComma }) }))
}

function readLine(cells: Cells<Column>, file: FileOf & { hasDecimalComma: boolean }): Omit<CountLine, 'line' | 'text'> {
  const thing = file.things.find(({ name }) => name.toLowerCase() === cells.thing?.toLowerCase()) ?? null
  const date = readDate(cells.date ?? '', file.locale)
  const bad = (problem: string) => ({ thing, date, meant: { problem } })
  if (!date) return bad(`"${cells.date ?? ''}" is no date. Write it as 2026-03-10.`)
  if (!thing)
    return bad(`Nothing in this room is called "${cells.thing ?? ''}". Write its name as the room page has it.`)
  const time = cells.time || timeUnsaid
  if (!/^([01]?\d|2[0-3]):[0-5]\d$/.test(time))
    return bad(`"${time}" is no time of day. Write it as 07:30, or leave it out.`)
  const of = cells.of ? countTargets.find((one) => one === cells.of) : usual[thing.kind]
  if (!of) return bad(`Say what was counted in the column "of": one of ${countTargets.join(', ')}.`)
  const numbers = readNumbers(cells, file.hasDecimalComma)
  if (typeof numbers === 'string') return bad(numbers)
  const at = timeOf(file, { date, time: time.padStart(5, '0') })
  return { thing, date, meant: { at, data: { of, ...numbers } } }
}

const numeric = {
  volume_ml: 'volumeMl',
  dilution: 'dilution',
  eggs: 'eggs',
  females: 'females',
  length_mm: 'lengthMm',
} as const

function readNumbers(
  cells: Cells<Column>,
  hasDecimalComma: boolean,
): ({ animals: number[] } & Record<string, unknown>) | string {
  const read = (text: string) => numberIn(text, hasDecimalComma)
  const animals = (cells.samples ?? '')
    .split(/[\s/+]+/)
    .filter(Boolean)
    .map(read)
  if (animals.length === 0 || animals.some((each) => !Number.isInteger(each) || each < 0))
    return `"${cells.samples ?? ''}" are no samples. Write whole numbers with a space between them, such as 60 66.`
  const others: Record<string, number> = {}
  for (const [column, name] of Object.entries(numeric) as [keyof typeof numeric, string][]) {
    const text = cells[column]
    if (!text) continue
    const value = read(text)
    if (!Number.isFinite(value)) return `"${text}" in ${column} is no number. Write digits, or leave it empty.`
    others[name] = value
  }
  return { animals, ...others }
}
