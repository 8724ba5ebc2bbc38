// Strangers without a session, each sending one after another what was made to cost a server most.
import { Agent, request } from 'node:http'

const { API: api, STRANGERS: strangers } = process.env
const id = '0195f3a0-0000-7000-8000-000000000000'
const keys = JSON.stringify(Object.fromEntries(Array.from({ length: 90_000 }, (_, index) => [`k${index}`, 1])))
const photo = Buffer.alloc(14 * 1024 * 1024, 0x7b)
const deep = `${'['.repeat(100_000)}${']'.repeat(100_000)}`
const json = 'application/json'
const claim = (more) =>
  JSON.stringify({ code: 'AAAA-BBBB-CCCC', name: 'x', email: 'x@example.test', password: 'long enough 1', ...more })

/** What each is called, where it goes, and what it sends. */
const attacks = [
  ['a photo of 14 MB', `/api/v1/rooms/${id}/photos?subjectId=${id}`, 'image/jpeg', photo],
  ['14 MB of picture for a route of JSON', '/api/v1/claim', 'image/jpeg', photo],
  ['14 MB for an address that is none', '/api/v1/nothing', 'image/png', photo],
  ['1 MB of JSON with 90,000 keys, a room', '/api/v1/rooms', json, keys],
  ['1 MB of JSON with 90,000 keys, a claim', '/api/v1/claim', json, keys],
  ['1 MB of JSON with 90,000 keys, a sign-in', '/api/auth/sign-in/email', json, keys],
  ['lists 100,000 deep', '/api/v1/claim', json, deep],
  [
    '8 kB of keys, a claim',
    '/api/v1/claim',
    json,
    claim(JSON.parse(`{${keys.slice(1, 7000).replace(/,[^,]*$/, '')}}`)),
  ],
  ['a claim with a wrong code', '/api/v1/claim', json, claim({})],
  [
    'a wrong invitation',
    `/api/v1/invitations/${'x'.repeat(32)}/join`,
    json,
    JSON.stringify({ name: 'x', email: 'x@example.test', password: 'long enough 1' }),
  ],
]

const sent = Object.fromEntries(attacks.map(([what]) => [what, { answered: 0, statuses: [] }]))
let isOver = false

function post([what, path, type, body], agent) {
  return new Promise((resolve) => {
    const asked = request(
      `${api}${path}`,
      { method: 'POST', agent, headers: { 'content-type': type, 'content-length': Buffer.byteLength(body) } },
      (answer) => {
        answer.resume()
        answer.on('end', resolve)
        sent[what].answered += 1
        if (!sent[what].statuses.includes(answer.statusCode)) sent[what].statuses.push(answer.statusCode)
      },
    )
    // Hung up on: the next one is sent.
    asked.on('error', resolve)
    asked.end(body)
  })
}

async function stranger(turn) {
  const agent = new Agent({ keepAlive: true, maxSockets: 1 })
  for (let next = turn; !isOver; next += 1) await post(attacks[next % attacks.length], agent)
  agent.destroy()
}

const all = Array.from({ length: Number(strangers) }, (_, turn) => stranger(turn))
process.send('begun')
process.once('message', async () => {
  isOver = true
  await Promise.all(all)
  process.send(sent)
})
