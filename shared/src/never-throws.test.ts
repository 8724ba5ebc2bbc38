import { afterAll, expect, test } from 'vitest'
import * as z from 'zod'
import { wantedInstead } from './refusal.ts'
import { routes } from './routes.ts'

type Schema = z.core.$ZodType
// The API puts sentences to what is wrong; making them must not fail either.
const { localeError } = z.config()
z.config({ localeError: wantedInstead })
afterAll(() => void z.config({ localeError }))

/** A schema with every schema inside it. */
function withInner(schema: Schema, found = new Set<Schema>()): Set<Schema> {
  if (found.has(schema)) return found
  found.add(schema)
  // Checks run on what their schema has let through.
  const { checks: _checks, ...inner } = schema._zod.def
  const open: unknown[] = [inner]
  for (let part = open.pop(); part !== undefined; part = open.pop()) {
    if (part instanceof z.core.$ZodType) withInner(part, found)
    else if (part !== null && typeof part === 'object' && !(part instanceof RegExp)) open.push(...Object.values(part))
  }
  return found
}

const hostile: unknown[] = [
  ...[null, undefined, true, -1, 1e308, Number.NaN, '', '\ud800', [], {}, [[]], [null], () => 1],
  ...['toString', 'valueOf', 'constructor', 'length', 'size', 'then', 'toJSON'].map((name) => ({ [name]: { a: 1 } })),
  // What JSON can hold and no arithmetic can read.
  ...['length', 'size', 'value', 'kind'].map((name) => ({ [name]: { toString: '', valueOf: '' } })),
  { toString: '', valueOf: '' },
  Object.create(null),
  JSON.parse('{"__proto__":{"length":3}}'),
]

test('no schema of the contract throws, whatever stands in any of its places', () => {
  const schemas = new Set<Schema>()
  for (const { params, query, body } of Object.values(routes))
    for (const schema of [params, query, body]) withInner(schema, schemas)
  expect(schemas.size).toBeGreaterThan(100)
  for (const schema of schemas)
    for (const value of hostile) {
      const { error } = z.safeParse(schema, value)
      if (error) expect(z.prettifyError(error)).not.toBe('')
    }
})
