// Writers whose every note can be told from every other: each is sent under a key of its own, again and again, until the
// server says that it is kept. Whatever is killed meanwhile, each acknowledged note then stands exactly once.
import { setTimeout as sleep } from 'node:timers/promises'
import pg from 'pg'

const account = { email: 'owner@example.test', password: 'four words not common' }
const setUp = {
  ...{ name: 'Back room', timeZone: 'Europe/Lisbon', units: 'metric', lightsOnAt: '07:00', lightsOffAt: '19:00' },
  ...{ salinity: 33, temperatureC: 27 },
}

/** Claims a fresh server and sets up a room in it. */
export async function openRoom(origin, code) {
  const post = async (path, body, headers = {}) => {
    const sent = { 'content-type': 'application/json', ...headers }
    const answer = await fetch(`${origin}${path}`, { method: 'POST', headers: sent, body: JSON.stringify(body) })
    if (!answer.ok) throw new Error(`${path} answered ${answer.status}: ${await answer.text()}`)
    return answer
  }
  await post('/api/v1/claim', { code, name: 'The owner', ...account })
  const signedIn = await post('/api/auth/sign-in/email', account)
  const cookies = signedIn.headers.getSetCookie().map((each) => each.split(';')[0])
  const cookie = cookies.join('; ')
  const { id } = await (await post('/api/v1/rooms', setUp, { cookie })).json()
  return { origin, cookie, id }
}

/** Six people, or as many as said, who write one note after the other, and rest in between if that is said. */
export function startWriters(room, { writers = 6, restMs = 0 } = {}) {
  const load = { acknowledged: new Set(), refusals: [], isOver: false, serial: 0, restMs }
  const all = Array.from({ length: writers }, () => write(room, load))
  return {
    acknowledged: load.acknowledged,
    refusals: load.refusals,
    stop: async () => {
      load.isOver = true
      await Promise.all(all)
    },
  }
}

async function write(room, load) {
  while (!load.isOver) {
    load.serial += 1
    const number = load.serial
    for (;;) {
      const status = await send(room, number)
      if (status === 201) break
      // No answer, or one that says to try again: sent again under its key.
      if (status < 500) load.refusals.push(`note ${number}: ${status}`)
      await sleep(50)
    }
    load.acknowledged.add(number)
    if (load.restMs > 0) await sleep(load.restMs)
  }
}

/** The status; 599 where the connection was cut or nobody answered. */
async function send({ origin, cookie, id }, number) {
  try {
    const answer = await fetch(`${origin}/api/v1/rooms/${id}/notes`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', cookie, 'idempotency-key': `note-${number}-of-many` },
      body: JSON.stringify({ text: `note ${number}`, isWorry: false }),
      signal: AbortSignal.timeout(30_000),
    })
    await answer.arrayBuffer()
    return answer.status
  } catch {
    return 599
  }
}

/** What the database holds of what was acknowledged. */
export async function reckon({ acknowledged }, { connectionString, room }) {
  const client = new pg.Client({ connectionString })
  await client.connect()
  const { rows } = await client.query(
    'SELECT text, count(*)::int AS times FROM note WHERE room_id = $1 GROUP BY text',
    [room.id],
  )
  await client.end()
  const kept = new Map(rows.map(({ text, times }) => [text, times]))
  return {
    lost: [...acknowledged].filter((number) => !kept.has(`note ${number}`)).length,
    doubled: rows.filter(({ times }) => times > 1).length,
  }
}
