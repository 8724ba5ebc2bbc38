import type { JsonSchema } from './open-api.ts'

/** A value that a schema rules out: where it was put, and the whole body with it. */
export type Violation = { where: string; body: unknown }

type Json = Record<string, unknown>
const isObject = (value: unknown): value is Json => value !== null && typeof value === 'object' && !Array.isArray(value)

/** Every way in which one field of a valid body can break its schema, one at a time. */
export function violationsOf(schema: JsonSchema, valid: unknown): Violation[] {
  return violationsAt({ schema, value: valid, where: 'body' })
}

function violationsAt({ schema, value, where }: { schema: JsonSchema; value: unknown; where: string }): Violation[] {
  const branches = schema.anyOf ?? schema.oneOf
  if (branches) {
    const isNullable = branches.some((branch) => branch.type === 'null')
    const branch = branchFor(branches, value)
    if (!branch) return []
    const found = violationsAt({ schema: branch, value, where })
    return isNullable ? found.filter((violation) => violation.body !== null) : found
  }
  const wrong = (name: string, body: unknown): Violation => ({ where: `${where} ${name}`, body })
  switch (schema.type) {
    case 'object':
      return objectViolations({ schema, value: isObject(value) ? value : {}, where })
    case 'array': {
      const list = Array.isArray(value) ? value : []
      const inner = schema.items ? violationsAt({ schema: schema.items, value: list[0], where: `${where}[0]` }) : []
      return [
        wrong('is an object', {}),
        wrong('is text', 'abc'),
        wrong('is null', null),
        ...(schema.minItems ? [wrong('is empty', [])] : []),
        ...(schema.maxItems !== undefined && list.length > 0
          ? [wrong('is too long', Array(schema.maxItems + 1).fill(list[0]))]
          : []),
        ...inner.map((violation) => ({ where: violation.where, body: [violation.body, ...list.slice(1)] })),
      ]
    }
    case 'number':
    case 'integer':
      return numberViolations(schema).map(([name, body]) => wrong(name, body))
    case 'boolean':
      return [wrong('is a number', 1), wrong('is text', 'true'), wrong('is null', null)]
    case 'string':
      return stringViolations(schema).map(([name, body]) => wrong(name, body))
    default:
      return []
  }
}

function branchFor(branches: JsonSchema[], value: unknown): JsonSchema | undefined {
  const concrete = branches.filter((branch) => branch.type !== 'null')
  if (isObject(value))
    return concrete.find((branch) =>
      Object.entries(branch.properties ?? {}).every(
        ([name, property]) => property.enum === undefined || property.enum.includes(value[name]),
      ),
    )
  // A union of plain types has no single way to be wrong.
  return concrete.length === 1 ? concrete[0] : undefined
}

function objectViolations({ schema, value, where }: { schema: JsonSchema; value: Json; where: string }): Violation[] {
  const found: Violation[] = [
    { where: `${where} is null`, body: null },
    { where: `${where} is a list`, body: [value] },
    { where: `${where} is text`, body: 'abc' },
    { where: `${where} is a number`, body: 7 },
  ]
  if (schema.additionalProperties === false)
    found.push({ where: `${where} has an unknown field`, body: { ...value, unheardOf: 1 } })
  for (const name of schema.required ?? [])
    found.push({
      where: `${where}.${name} is missing`,
      body: Object.fromEntries(Object.entries(value).filter(([key]) => key !== name)),
    })
  for (const [name, property] of Object.entries(schema.properties ?? {}))
    for (const violation of violationsAt({ schema: property, value: value[name], where: `${where}.${name}` }))
      found.push({ where: violation.where, body: { ...value, [name]: violation.body } })
  return found
}

function numberViolations(schema: JsonSchema): [string, unknown][] {
  const found: [string, unknown][] = [
    ['is text', '12'],
    ['is null, as JSON writes a NaN', null],
    ['is true', true],
    ['is a list', [1]],
  ]
  if (schema.maximum !== undefined) {
    found.push(['is just too large', schema.maximum + 1], ['is absurd', 1e308])
    if (schema.maximum < 400) found.push(['is 400', 400])
  }
  if (schema.minimum !== undefined) found.push(['is just too small', schema.minimum - 1], ['is far below', -1e308])
  if (schema.exclusiveMinimum !== undefined) found.push(['is the bound itself', schema.exclusiveMinimum], ['is -1', -1])
  if (schema.type === 'integer') found.push(['is a fraction', 1.5])
  return found
}

function stringViolations(schema: JsonSchema): [string, unknown][] {
  const found: [string, unknown][] = [
    ['is a number', 7],
    ['is null', null],
    ['is a list', ['abc']],
    ['is an object', { a: 1 }],
    ['holds a zero byte', 'a\u0000b'],
    ['holds half a character pair', 'a\ud800b'],
  ]
  if (schema.enum) found.push(['is no word of the list', 'unheard-of'], ['is empty', ''])
  if (schema.format === 'uuid') found.push(['is no id', 'not-an-id'], ['is empty', ''])
  if (schema.format === 'email') found.push(['is no address', 'nobody'])
  if (schema.format === 'date-time')
    for (const text of [
      'yesterday',
      '0000-01-01T00:00:00.000Z',
      '9999-12-31T23:59:59.999Z',
      '2026-02-30T08:00:00.000Z',
    ])
      found.push([`is ${text}`, text])
  if (schema.format === 'date')
    for (const text of ['today', '0000-01-01', '9999-12-31', '2026-02-30', '2026-02-01T08:00:00Z'])
      found.push([`is ${text}`, text])
  if (schema.minLength) found.push(['is too short', ''])
  if (schema.maxLength !== undefined) found.push(['is too long', 'x'.repeat(schema.maxLength + 1)])
  if (schema.pattern && !schema.format && !schema.enum) found.push(['does not fit its pattern', '!! ??'])
  return found
}
