import { timeOf } from '@fryward/husbandry'
import { inKeptUnit, millisecondsOf, quantities } from '@fryward/readings'
import type { GaugeQuantity, PlainDate } from '@fryward/shared'
import { type Cells, numberIn, readTable } from './csv-table.ts'
import { readDate } from './read-date.ts'

const columns = ['date', 'time', 'at', 'value', 'unit'] as const
type Column = (typeof columns)[number]
const alsoCalled: Record<string, Column> = {
  ...{ day: 'date', timestamp: 'at', datetime: 'at', date_time: 'at', reading: 'value' },
  ...{ temperature: 'value', salinity: 'value', ph: 'value', oxygen: 'value', redox: 'value', level: 'value' },
}

export type FileOf = { timeZone: string; locale: string; quantity: GaugeQuantity; nowMs: number }
export type ReadingLine = {
  line: number
  text: string
  date: PlainDate | null
  meant: { at: number; value: number } | { problem: string }
}

/**
 * Reads readings of one gauge out of a CSV file: when, and what each line says, or what is wrong with it.
 * @throws RoomError `invalid_input` where the file as a whole cannot be read.
 */
export function readReadingsFile(text: string, file: FileOf): ReadingLine[] {
  const { hasDecimalComma, lines } = readTable(text, { columns, alsoCalled, needed: ['value'] })
  return lines.map(({ line, text: written, cells }) => {
    const when = momentOf(cells, file)
    const date = when.date ?? null
    const said = { line, text: written, date }
    if ('problem' in when) return { ...said, meant: when }
    const value = numberOfLine(cells, { ...file, hasDecimalComma })
    return { ...said, meant: typeof value === 'number' ? { at: when.at, value } : value }
  })
}

type Moment = { at: number; date: PlainDate | null }
type Problem = { problem: string; date?: PlainDate | null }

function momentOf(cells: Cells<Column>, file: FileOf): Moment | Problem {
  const moment = cells.at ? whole(cells.at, file) : local(cells.date ?? '', cells.time ?? '', file)
  if ('problem' in moment) return moment
  return moment.at > file.nowMs ? { problem: 'This time has not come yet.', date: moment.date } : moment
}

/** Date and time in one cell: with its zone, in seconds since 1970, or by the room's clock. */
function whole(text: string, file: FileOf): Moment | Problem {
  const at = millisecondsOf(text)
  if (at !== null) return { at, date: null }
  const [, date, time] = /^(\S+?)[T ]+(\d{1,2}:\d{2}(?::\d{2})?)(?:\.\d+)?$/.exec(text) ?? []
  if (date && time) return local(date, time, file)
  return { problem: `"${text}" is no time. Write it as 2026-03-10 07:30, or in two columns, date and time.` }
}

function local(dateText: string, time: string, file: FileOf): Moment | Problem {
  const date = readDate(dateText, file.locale)
  if (!date) return { problem: `"${dateText}" is no date. Write it as 2026-03-10.` }
  if (!/^([01]?\d|2[0-3]):[0-5]\d(:[0-5]\d)?$/.test(time))
    return { problem: `"${time}" is no time of day. Write it as 07:30 or 07:30:15.`, date }
  return { at: Date.parse(timeOf(file, { date, time: time.padStart(time.length < 6 ? 5 : 8, '0') })), date }
}

function numberOfLine(
  cells: Cells<Column>,
  { quantity, hasDecimalComma }: Pick<FileOf, 'quantity'> & { hasDecimalComma: boolean },
): number | { problem: string } {
  const text = cells.value ?? ''
  const value = numberIn(text, hasDecimalComma)
  if (!Number.isFinite(value)) return { problem: `"${text}" is no number. Write digits, such as 25.4.` }
  const { lowest, highest, from } = quantities[quantity]
  const inUnit = inKeptUnit(quantity, value, cells.unit || null)
  if (inUnit === null)
    return { problem: `"${cells.unit}" is no unit of ${quantity}. Write one of: ${Object.keys(from).join(', ')}.` }
  if (inUnit < lowest || inUnit > highest)
    return { problem: `No ${quantity} is outside ${lowest} to ${highest}. Look at the unit and the decimal mark.` }
  return inUnit
}
