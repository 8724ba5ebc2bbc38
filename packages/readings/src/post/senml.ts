import { createReader } from './fate.ts'
import { type Arrival, mostReadings, type Post, tooMany, UnreadablePost } from './posted.ts'

// RFC 8428, section 4.5.3: a time below this is so many seconds before or after now.
const relativeBelow = 2 ** 28
// Section 4.4: the version that is read here.
const version = 10

type Base = { name: string; time: number; unit: string | null; value: number }

/**
 * SenML JSON (RFC 8428): a list of records whose base fields hold from their record on. Values that are no numbers and
 * sums are refused one by one; a field that must be understood and is not (its name ends in `_`) refuses the post, as
 * section 4.4 asks.
 */
export function readSenml(body: unknown, arrival: Arrival): Post {
  if (!Array.isArray(body)) throw new UnreadablePost('SenML is a list of records.')
  if (body.length > mostReadings) throw new UnreadablePost(tooMany)
  const reader = createReader(arrival)
  let base: Base = { name: '', time: 0, unit: null, value: 0 }
  for (const [index, each] of body.entries()) {
    const record = recordOf(each)
    base = baseAfter(base, record)
    if (!holdsReading(record)) continue
    const time = base.time + numberIn(record, 't', 0)
    reader.take({
      index,
      gauge: `${base.name}${textIn(record, 'n') ?? ''}` || arrival.gauge,
      at: time < relativeBelow ? relative(time, arrival) : time,
      value: 'v' in record ? sum(record.v, base.value) : undefined,
      unit: textIn(record, 'u') ?? base.unit,
    })
  }
  return reader.post
}

// Before or after a moment that is not known is no time.
const relative = (time: number, { nowMs, isLate }: Arrival) => (isLate ? null : nowMs / 1000 + time)

type SenmlRecord = Record<string, unknown>

function recordOf(each: unknown): SenmlRecord {
  if (typeof each !== 'object' || each === null || Array.isArray(each))
    throw new UnreadablePost('Each record of SenML is an object.')
  const record = each as SenmlRecord
  const unknown = Object.keys(record).find((name) => name.endsWith('_'))
  if (unknown !== undefined) throw new UnreadablePost(`The SenML field ${unknown.slice(0, 40)} is not understood here.`)
  if (numberIn(record, 'bver', version) > version)
    throw new UnreadablePost(`SenML up to version ${version} is read here.`)
  return record
}

const baseAfter = (base: Base, record: SenmlRecord): Base => ({
  name: textIn(record, 'bn') ?? base.name,
  time: numberIn(record, 'bt', base.time),
  unit: textIn(record, 'bu') ?? base.unit,
  value: numberIn(record, 'bv', base.value),
})

/** A record may hold base fields alone. */
const holdsReading = (record: SenmlRecord): boolean => ['n', 'v', 'vs', 'vb', 'vd', 's'].some((name) => name in record)

const sum = (value: unknown, base: number): unknown => (typeof value === 'number' ? value + base : value)

function textIn(record: SenmlRecord, name: string): string | null {
  const value = record[name]
  if (value === undefined) return null
  if (typeof value !== 'string') throw new UnreadablePost(`The SenML field ${name} is text.`)
  return value
}

function numberIn(record: SenmlRecord, name: string, without: number): number {
  const value = record[name]
  if (value === undefined) return without
  if (typeof value !== 'number' || !Number.isFinite(value))
    throw new UnreadablePost(`The SenML field ${name} is a number.`)
  return value
}
