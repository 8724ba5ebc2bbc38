import { type Route, routes, takesRepeatKey } from '@fryward/shared'

/** The parts of a description that are worked on here; whatever else it holds stays as it is. */
type Operation = { security?: unknown; parameters?: unknown[]; requestBody?: unknown }
type Schemas = Record<string, unknown>
type Document = {
  paths?: Record<string, Partial<Record<(typeof methods)[number], Operation>>>
  components?: { schemas?: Schemas; parameters?: Record<string, unknown> }
}

const schemaRef = '#/components/schemas/'
const parameterName = 'IdempotencyKey'
const methods = ['post', 'put', 'patch', 'delete'] as const

const idempotencyKey = {
  in: 'header',
  name: 'Idempotency-Key',
  required: false,
  description:
    'Names this write, so that a repeat after a lost answer gets the first answer and has no second effect. Kept for 30 days; the same key with another request is refused with idempotency_mismatch. A UUID does.',
  schema: { type: 'string', pattern: '^[\\x21-\\x7e]{8,128}$' },
}

/** What the generator leaves to do: the repeat key said once, bodies that are bytes, and no schema that nothing uses. */
export function finishOpenApi<T extends object>(generated: T): T {
  return Object.assign({}, generated, withUsedSchemas(withUploads(withRepeatKeys(generated))))
}

function withRepeatKeys(document: Document): Document {
  const keyed = new Set(
    Object.values<Route>(routes)
      .filter(takesRepeatKey)
      .map(({ method, ...route }) => `${method.toLowerCase()} ${describedAt(route)}`),
  )
  const paths = Object.fromEntries(
    Object.entries(document.paths ?? {}).map(([path, item]) => {
      const named = { ...item }
      for (const method of methods) {
        const operation = named[method]
        if (!operation || !keyed.has(`${method} ${path}`)) continue
        const parameters = [...(operation.parameters ?? []), { $ref: `#/components/parameters/${parameterName}` }]
        named[method] = { ...operation, parameters }
      }
      return [path, named]
    }),
  )
  return { ...document, paths, components: { ...document.components, parameters: { [parameterName]: idempotencyKey } } }
}

/** The address of a route as OpenAPI writes it. */
const describedAt = ({ base, path }: Pick<Route, 'base' | 'path'>): string =>
  `${base}${path.replace(/:(\w+)/g, '{$1}')}`

/** Bodies that are bytes have no schema that a request is held against, only types. */
function withUploads(document: Document): Document {
  const paths = { ...document.paths }
  for (const { kind, method, base, path, takes } of Object.values<Route>(routes)) {
    if (kind !== 'bytes' || takes.length === 0) continue
    const address = describedAt({ base, path })
    const name = methods.find((each) => each === method.toLowerCase())
    const operation = name && paths[address]?.[name]
    if (!operation) throw new Error(`The description has no ${method} ${address}`)
    const content = Object.fromEntries(takes.map((type) => [type, { schema: { type: 'string', format: 'binary' } }]))
    paths[address] = { ...paths[address], [name]: { ...operation, requestBody: { required: true, content } } }
  }
  return { ...document, paths }
}

/** Drops every schema that no path leads to: the generator makes a second of each, as sent, which no route names. */
function withUsedSchemas(document: Document): Document {
  const schemas = schemasOf(document)
  const used = new Set<string>()
  const open = [...refsIn(document.paths)]
  for (let name = open.pop(); name !== undefined; name = open.pop()) {
    if (used.has(name)) continue
    used.add(name)
    open.push(...refsIn(schemas[name]))
  }
  const kept = Object.fromEntries(Object.entries(schemas).filter(([name]) => used.has(name)))
  return { ...document, components: { ...document.components, schemas: kept } }
}

const schemasOf = (document: Document): Schemas => document.components?.schemas ?? {}

function refsIn(part: unknown): Set<string> {
  const found = new Set<string>()
  JSON.stringify(part, (key, value: unknown) => {
    if (key === '$ref' && typeof value === 'string' && value.startsWith(schemaRef))
      found.add(value.slice(schemaRef.length))
    return value
  })
  return found
}
