import type { KeptReading } from './kept-reading.ts'

// PostgreSQL's own form of rows and lists: nothing is written as text here to be read again there. Layout: PostgreSQL 15
// documentation, COPY, "Binary Format"; of lists, src/backend/utils/adt/arrayfuncs.c (array_recv); instants are microseconds
// since the beginning of 2000 (src/include/datatype/timestamp.h).
const epochMs = Date.UTC(2000, 0, 1)
const high = 2 ** 32

const signature = Buffer.from('PGCOPY\n\xff\r\n\0', 'latin1')
// Flags and the length of what more a header may hold, both none.
const headerBytes = signature.length + 8
const rowBytes = 2 + (4 + 4) + (4 + 8) + (4 + 8)

/** Readings as COPY takes them: gauge, moment, value. */
export function copyOf(readings: readonly KeptReading[]): Buffer {
  const rows = Buffer.alloc(headerBytes + readings.length * rowBytes + 2)
  signature.copy(rows)
  const view = new DataView(rows.buffer, rows.byteOffset)
  let place = headerBytes
  for (const { channel, at, value } of readings) {
    view.setInt16(place, 3)
    view.setInt32(place + 2, 4)
    view.setInt32(place + 6, channel)
    view.setInt32(place + 10, 8)
    setInstant(view, place + 14, at)
    view.setInt32(place + 22, 8)
    view.setFloat64(place + 26, value)
    place += rowBytes
  }
  view.setInt16(place, -1)
  return rows
}

const setInstant = (view: DataView, place: number, at: number): void => {
  const micros = (at - epochMs) * 1000
  view.setInt32(place, Math.floor(micros / high))
  view.setUint32(place + 4, micros - Math.floor(micros / high) * high)
}

type Element = { oid: number; bytes: number; set: (view: DataView, place: number, value: number) => void }

// The numbers of types: PostgreSQL 15, src/include/catalog/pg_type.dat.
const int4: Element = { oid: 23, bytes: 4, set: (view, place, value) => view.setInt32(place, value) }
const float8: Element = { oid: 701, bytes: 8, set: (view, place, value) => view.setFloat64(place, value) }
const timestamptz: Element = { oid: 1184, bytes: 8, set: setInstant }

const listOf =
  ({ oid, bytes, set }: Element) =>
  (values: readonly number[]): Buffer => {
    const list = Buffer.alloc(20 + values.length * (4 + bytes))
    const view = new DataView(list.buffer, list.byteOffset)
    // One dimension, no nulls, the type, how many, counted from 1.
    for (const [index, word] of [1, 0, oid, values.length, 1].entries()) view.setInt32(4 * index, word)
    let place = 20
    for (const value of values) {
      view.setInt32(place, bytes)
      set(view, place + 4, value)
      place += 4 + bytes
    }
    return list
  }

/** Lists as parameters of a statement, of one at least; instants are milliseconds since 1970. */
export const lists = { int4: listOf(int4), float8: listOf(float8), timestamptz: listOf(timestamptz) }
