import { createReader } from './fate.ts'
import { type Arrival, mostReadings, type Post, tooMany, UnreadablePost } from './posted.ts'

type Said = { gauge?: unknown; at?: unknown; value?: unknown; unit?: unknown }

/**
 * Our own JSON: one reading, a list of them, or `{"readings": [...]}`. A reading is
 * `{"gauge": "t1", "value": 25.4, "at": "2026-03-10T08:00:00Z", "unit": "Cel"}`; without `at` it is of now, without
 * `unit` in the one that is kept.
 */
export function readPlain(body: unknown, arrival: Arrival): Post {
  const list = listOf(body)
  if (list.length > mostReadings) throw new UnreadablePost(tooMany)
  const reader = createReader(arrival)
  for (const [index, each] of list.entries()) {
    const said: Said = typeof each === 'object' && each !== null ? each : {}
    reader.take({
      index,
      gauge: said.gauge ?? arrival.gauge,
      at: said.at ?? null,
      value: said.value,
      unit: said.unit ?? null,
    })
  }
  return reader.post
}

function listOf(body: unknown): unknown[] {
  if (Array.isArray(body)) return body
  if (typeof body !== 'object' || body === null)
    throw new UnreadablePost('Send one reading as {"gauge": "t1", "value": 25.4}, or a list of them.')
  const { readings } = body as { readings?: unknown }
  if (readings === undefined) return [body]
  if (!Array.isArray(readings)) throw new UnreadablePost('"readings" is a list of readings.')
  return readings
}
