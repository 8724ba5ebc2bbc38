import { readFileSync } from 'node:fs'
import { parse } from 'csv-parse/sync'
import { expect, test } from 'vitest'

/** One published figure: the inputs of a formula, what it gives, how near, and who printed it. */
export type CheckRow = {
  id: string
  quantity: string
  inputs: Record<string, unknown>
  output: string
  expected: number
  tolerance: number
  citation: string
}

type CsvRow = Record<'id' | 'quantity' | 'inputs' | 'output' | 'expected' | 'tolerance' | 'citation', string>

/** Rows of tests/reference/data/<name>.csv. */
export function readCheckRows(name: string): CheckRow[] {
  const text = readFileSync(new URL(`./data/${name}.csv`, import.meta.url), 'utf8')
  const rows: CsvRow[] = parse(text, { columns: true })
  return rows.map((row) => ({
    ...row,
    inputs: JSON.parse(row.inputs),
    expected: Number(row.expected),
    tolerance: Number(row.tolerance),
  }))
}

export function numberInput({ id, inputs }: CheckRow, name: string): number {
  const value = inputs[name]
  if (typeof value === 'number') return value
  throw new Error(`${id}: input ${name} is ${String(value)}, not a number`)
}

export function textInput({ id, inputs }: CheckRow, name: string): string {
  const value = inputs[name]
  if (typeof value === 'string') return value
  throw new Error(`${id}: input ${name} is ${String(value)}, not text`)
}

/** Printed decimals are exact in the tables and not in binary; this is far under any tolerance but 0. */
const BINARY_SLACK = 1e-12

export function expectWithin(actual: number, row: CheckRow, tolerance = row.tolerance): void {
  expect(actual, `${row.id} ${row.quantity} ${row.output}: ${row.citation}`).toBeGreaterThanOrEqual(
    row.expected - tolerance - BINARY_SLACK,
  )
  expect(actual, `${row.id} ${row.quantity} ${row.output}: ${row.citation}`).toBeLessThanOrEqual(
    row.expected + tolerance + BINARY_SLACK,
  )
}

/** What a row's formula is here, or why the row is not tried. */
export type Handling =
  | { compute: (row: CheckRow) => number; tolerance?: (row: CheckRow) => number }
  | { leftOut: string }

/**
 * One test per row. Rows are handled by "quantity output" or by quantity; a row that nothing handles fails.
 */
export function testCheckRows(name: string, handlers: Record<string, Handling>): void {
  const rows = readCheckRows(name)
  test(`${name}.csv has rows, and every handler has a row`, () => {
    const used = rows.flatMap((row) => [row.quantity, `${row.quantity} ${row.output}`])
    expect(Object.keys(handlers).filter((key) => !used.includes(key))).toEqual([])
    expect(rows.length).toBeGreaterThan(0)
  })
  for (const row of rows) {
    const handler = handlers[`${row.quantity} ${row.output}`] ?? handlers[row.quantity]
    if (handler !== undefined && 'leftOut' in handler) continue
    test(`${row.id} ${row.quantity} ${JSON.stringify(row.inputs)} is ${row.expected} (${row.citation})`, () => {
      if (handler === undefined) throw new Error(`no handler for ${row.quantity} ${row.output}`)
      expectWithin(handler.compute(row), row, handler.tolerance?.(row))
    })
  }
}
