// Requests made up from the description of the API: mostly well formed, each with something wrong or odd in it, and bytes
// that are no request at all. The same seed makes the same ones.
import { connect } from 'node:net'

/** Numbers from 0 to 1 that rest on the seed alone (mulberry32, T. Ettinger 2017, public domain). */
export function chance(seed) {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296
  }
}

const odd = [
  ...[
    null,
    true,
    false,
    0,
    -1,
    1.5,
    1e308,
    -1e308,
    2 ** 53,
    '',
    ' ',
    'NaN',
    'null',
    '\u0000',
    '\ud800',
    '\u202eevil',
    '../../etc/passwd',
  ],
  ...[
    "' OR 1=1 --",
    '{{7*7}}',
    '<script>',
    '%00',
    '%',
    'x'.repeat(5000),
    '2026-02-30',
    '9999-12-31T23:59:60Z',
    [],
    {},
    [[]],
    [null],
  ],
  ...[
    { length: 5 },
    { __proto__: null, constructor: 1 },
    { toString: 'x' },
    '00000000-0000-0000-0000-000000000000',
    Array(300).fill(1),
  ],
]

/** @param description the OpenAPI document. @param known ids that exist, by the name of their parameter. */
export function requestsOf(description, { random, known }) {
  const pick = (list) => list[Math.floor(random() * list.length)]
  const { schemas = {} } = description.components ?? {}
  const resolve = (schema) => (schema.$ref ? (schemas[schema.$ref.split('/').at(-1)] ?? {}) : schema)
  const operations = Object.entries(description.paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, operation]) => ({ path, method: method.toUpperCase(), operation })),
  )

  function made(given, depth = 0, name = '') {
    const schema = resolve(given)
    if (random() < 0.08 || depth > 6) return pick(odd)
    const choices = schema.anyOf ?? schema.oneOf
    if (choices) return made(pick(choices), depth + 1, name)
    if (schema.const !== undefined) return schema.const
    if (schema.enum) return pick(schema.enum)
    if (schema.type === 'object' || schema.properties) return objectOf(schema, depth)
    if (schema.type === 'array')
      return Array.from({ length: Math.floor(random() * 4) }, () => made(schema.items ?? {}, depth + 1))
    if (schema.type === 'boolean') return random() < 0.5
    if (schema.type === 'integer') return Math.floor((schema.minimum ?? 0) + random() * 5)
    if (schema.type === 'number') return (schema.minimum ?? schema.exclusiveMinimum ?? 0) + random() * 10
    return textOf(schema, name)
  }
  function objectOf(schema, depth) {
    const entries = Object.entries(schema.properties ?? {})
      .filter(([name]) => random() < ((schema.required ?? []).includes(name) ? 0.95 : 0.5))
      .map(([name, inner]) => [name, made(inner, depth + 1, name)])
    if (random() < 0.05) entries.push([pick(['__proto__', 'constructor', 'unheardOf', '']), pick(odd)])
    return Object.fromEntries(entries)
  }
  function textOf({ format, pattern, minLength = 1 }, name) {
    if (known[name] && random() < 0.8) return pick(known[name])
    if (format === 'email') return `fuzz-${Math.floor(random() * 1e6)}@example.test`
    if (format === 'date-time') return new Date(Date.now() - random() * 4e8).toISOString()
    if (format === 'date') return new Date(Date.now() - random() * 4e8).toISOString().slice(0, 10)
    if (format === 'uuid' || pattern?.includes('0-9a-f')) return pick(Object.values(known).flat())
    return pick(['Back room', 'Tank 1', 'a text', 'äöü', '07:00']).padEnd(minLength, 'x')
  }

  function parameter({ name, schema = {} }) {
    if (random() < 0.06)
      return encodeURIComponent(String(pick(odd.filter((each) => typeof each !== 'object' && each !== '\ud800'))))
    return encodeURIComponent(String(known[name] && random() < 0.9 ? pick(known[name]) : textOf(schema, name)))
  }

  /** One request: its method, address, headers and body. */
  return function next() {
    const { path, method, operation } = pick(operations)
    const parameters = (operation.parameters ?? []).filter((each) => each.in)
    const byName = new Map(parameters.map((each) => [each.name, each]))
    const filled = path.replace(/\{(\w+)\}/g, (_whole, name) => parameter(byName.get(name) ?? { name }))
    const query = parameters
      .filter((each) => each.in === 'query' && random() < 0.6)
      .map((each) => `${each.name}=${parameter(each)}`)
    const content = operation.requestBody?.content ?? {}
    const [type] = Object.keys(content)
    const body = type === undefined ? undefined : bodyOf(type, content[type])
    const headers = {
      ...(body === undefined
        ? {}
        : { 'content-type': random() < 0.97 ? type : pick(['text/plain', 'application/xml', '']) }),
      ...(random() < 0.2
        ? { 'idempotency-key': pick(['short', 'a-key-sent-again-and-again', '\u00e9'.repeat(9), 'x'.repeat(200)]) }
        : {}),
    }
    return {
      id: operation.operationId,
      method,
      url: `${filled}${query.length > 0 ? `?${query.join('&')}` : ''}`,
      headers,
      body,
    }
  }

  function bodyOf(type, { schema = {} }) {
    if (type !== 'application/json') return Buffer.from(Array.from({ length: 64 }, () => Math.floor(random() * 256)))
    if (random() < 0.04) return pick(['', '{', '[', 'null', '"x"', '{"a":1,"a":2}', `${'['.repeat(2000)}`])
    try {
      return JSON.stringify(made(schema))
    } catch {
      // A value of `odd` that JSON has no words for.
      return 'undefined'
    }
  }
}

const openings = [
  'GET / HTTP/1.1\r\n\r\n',
  'GET /api/v1/health HTTP/1.1\r\nHost: localhost\r\nContent-Length: 5\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n',
  'POST /api/v1/claim HTTP/1.1\r\nHost: localhost\r\nContent-Length: -1\r\n\r\n',
  'POST /api/v1/claim HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\nTransfer-Encoding: chunked\r\n\r\nZZ\r\n',
  'GET http://elsewhere.example/api/v1/me HTTP/1.1\r\nHost: localhost\r\n\r\n',
  'GET /api/v1/me HTTP/9.9\r\nHost: localhost\r\n\r\n',
  'OPTIONS * HTTP/1.1\r\nHost: localhost\r\n\r\n',
  'CONNECT localhost:1 HTTP/1.1\r\nHost: localhost\r\n\r\n',
  'PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n',
  `GET /${'a'.repeat(20_000)} HTTP/1.1\r\nHost: localhost\r\n\r\n`,
  `GET / HTTP/1.1\r\nHost: localhost\r\nCookie: ${'a=b; '.repeat(5000)}\r\n\r\n`,
  'GET /%c0%ae%c0%ae/%2e%2e/etc/passwd HTTP/1.1\r\nHost: localhost\r\n\r\n',
  'GET /api/v1/rooms/%00 HTTP/1.1\r\nHost: localhost\r\n\r\n',
  'GET /api/v1/health HTTP/1.1\r\nHost: a\r\nHost: b\r\n\r\n',
  'GET /api/v1/health HTTP/1.1\r\nHost: localhost\r\n bad folding: x\r\n\r\n',
]

/** Bytes on a bare connection: one of the openings, cut or scrambled. */
export function bytesOf(random) {
  const opening = Buffer.from(openings[Math.floor(random() * openings.length)], 'latin1')
  const how = random()
  if (how < 0.4) return opening
  if (how < 0.6) return opening.subarray(0, Math.floor(random() * opening.length))
  for (let changes = 0; changes < 6; changes += 1)
    opening[Math.floor(random() * opening.length)] = Math.floor(random() * 256)
  return opening
}

/** Sends bytes and hangs up its own side; gives the status of the answer, `closed`, or `hang` after `patienceMs`. */
export function sendBytes({ host, port }, bytes, patienceMs) {
  return new Promise((resolve) => {
    let answer = ''
    const socket = connect({ host, port }, () => socket.end(bytes))
    const end = (outcome) => {
      clearTimeout(timer)
      socket.destroy()
      resolve(outcome)
    }
    const outcome = () => /^HTTP\/1\.1 (\d{3})/.exec(answer)?.[1] ?? 'closed'
    const timer = setTimeout(() => end('hang'), patienceMs)
    socket.on('data', (chunk) => {
      answer += chunk.toString('latin1')
    })
    socket.on('error', () => end(outcome()))
    socket.on('close', () => end(outcome()))
  })
}

/**
 * A copy of the request over HTTP; gives the status, or `hang` where no byte came for so long. A stream of events is hung up
 * on once it has begun.
 */
export async function sendRequest(origin, { method, url, headers, body }, { cookie, patienceMs }) {
  const abort = new AbortController()
  let timer = setTimeout(() => abort.abort(), patienceMs)
  try {
    const sent = { ...headers, ...(cookie ? { cookie } : {}) }
    for (const [name, value] of Object.entries(sent)) if (value === '' || /[^\x20-\x7e]/.test(value)) delete sent[name]
    const answer = await fetch(`${origin}${url}`, {
      method,
      headers: sent,
      body,
      signal: abort.signal,
      redirect: 'manual',
    })
    const isStream = (answer.headers.get('content-type') ?? '').startsWith('text/event-stream')
    for await (const _bytes of isStream ? [] : (answer.body ?? [])) {
      clearTimeout(timer)
      timer = setTimeout(() => abort.abort(), patienceMs)
    }
    return String(answer.status)
  } catch (error) {
    return abort.signal.aborted ? 'hang' : `closed: ${error?.cause?.code ?? error?.message}`
  } finally {
    clearTimeout(timer)
    abort.abort()
  }
}
