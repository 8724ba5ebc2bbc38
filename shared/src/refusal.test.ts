import { afterAll, describe, expect, it } from 'vitest'
import * as z from 'zod/mini'
import * as contract from './index.ts'
import { routes, wantedInstead } from './index.ts'

const { localeError } = z.config()
z.config({ localeError: wantedInstead })
afterAll(() => void z.config({ localeError }))

type Schema = z.core.$ZodType
/** Checks look like schemas too; they say nothing without the schema that they are part of. */
const isSchema = (value: unknown): value is Schema =>
  value !== null && typeof value === 'object' && '_zod' in value && (value as Schema)._zod.def.type !== undefined

/** The schema and all that it is made of. */
function partsOf(schema: Schema, found = new Set<Schema>()): Set<Schema> {
  if (found.has(schema)) return found
  found.add(schema)
  const walk = (value: unknown): void => {
    if (isSchema(value)) partsOf(value, found)
    else if (Array.isArray(value)) value.forEach(walk)
    else if (typeof value === 'object' && value !== null && Object.getPrototypeOf(value) === Object.prototype)
      Object.values(value).forEach(walk)
  }
  const { checks: _checks, ...inner } = schema._zod.def
  walk(inner)
  if ('shape' in inner) walk({ ...(inner.shape as object) })
  return found
}

const ofRoutes = Object.values(routes).flatMap(({ params, query, body, response }) => [params, query, body, response])
const ofFacts = Object.values(contract.factDataSchemas)
const named: Schema[] = Object.values<unknown>(contract).filter(isSchema)
const all = [...new Set([...named, ...ofFacts, ...ofRoutes].flatMap((schema) => [...partsOf(schema)]))]

/** Something wrong for each kind of check: kind of value, bounds on both sides, form, length, unknown names. */
const probes = [
  ...[undefined, null, true, 'x', '', '   ', 'x'.repeat(5000), '24:99', '1999-02-30', '1899-01-01T00:00:00Z'],
  ...[-1e12, -1, 0, 0.5, 1e12, Number.NaN, [], [1, 'x', {}], Array(2000).fill('x'), {}, { nobody: 'knows' }],
]

/** What zod's own sentences and ours would share only by mistake. */
const validatorsWords =
  /\b(invalid|expected|received|unrecognized|too small|too big|uuid|regex|pattern|int|nan|undefined|null)\b/i

describe('what a schema refuses', () => {
  const messages = all.flatMap((schema) =>
    probes.flatMap((probe) => z.safeParse(schema, probe).error?.issues.map((issue) => issue.message) ?? []),
  )

  it('is looked for in every schema of the contract', () => {
    expect(all.length).toBeGreaterThan(300)
    expect(messages.length).toBeGreaterThan(3000)
  })

  it('is answered with what to give instead, never in a validator’s own words', () => {
    expect([...new Set(messages)].filter((message) => message.trim() === '' || validatorsWords.test(message))).toEqual(
      [],
    )
  })

  it('reads on from "give": no capital, no full stop', () => {
    expect(
      [...new Set(messages)].filter((message) => /^[A-Z]|\.$/.test(message) && !/^[A-Z]{2}/.test(message)),
    ).toEqual([])
  })
})
