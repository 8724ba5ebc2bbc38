// What the states need beforehand: ids of things to look at, an empty room, an invitation, one real conflict.
import { randomUUID } from 'node:crypto'
import { signIn } from '../../load/demo-server.mjs'

/** A JSON client of the API for one person; throws with the answer when it is not what was asked for. */
async function clientOf(demo, role) {
  const cookie = await signIn(
    demo.origin,
    demo.people.find((person) => person.role === role),
  )
  const send = async (method, path, body, expected = [200, 201]) => {
    const answer = await fetch(`${demo.origin}/api/v1${path}`, {
      method,
      headers: { cookie, origin: demo.origin, 'content-type': 'application/json', 'idempotency-key': randomUUID() },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    })
    const text = await answer.text()
    if (!expected.includes(answer.status)) throw new Error(`${method} ${path} answered ${answer.status}: ${text}`)
    return JSON.parse(text)
  }
  return {
    cookie,
    get: (path) => send('GET', path),
    post: (path, body, expected) => send('POST', path, body, expected),
  }
}

/** Everything that the states look up by name. */
export async function prepare(demo) {
  const [owner, caretaker, standIn, viewer] = [
    await clientOf(demo, 'owner'),
    await clientOf(demo, 'caretaker'),
    await clientOf(demo, 'stand_in'),
    await clientOf(demo, 'viewer'),
  ]
  const base = `/rooms/${demo.roomId}`
  const list = (name) => owner.get(`${base}/${name}`)
  const newest = async (name, isIn = () => true) => (await list(name)).filter(isIn).at(0)?.id
  const ids = {
    cultures: (await list('cultures')).find((one) => one.kind === 'rotifer' && one.endedAt === null).id,
    tanks: (await list('tanks')).find((one) => one.kind === 'larval').id,
    pairs: await newest('pairs'),
    clutches: await newest('clutches', (one) => one.state === 'incubating'),
    hatched: (await list('clutches')).findLast((one) => one.state === 'hatched').id,
    batches: await newest('larval-batches', (one) => one.endedAt === null),
    groups: await newest('juvenile-groups', (one) => one.endedAt === null),
  }
  const invitation = await owner.post(`${base}/invitations`, { role: 'caretaker' })
  const empty = await owner.post('/rooms', emptyRoom)
  const { tasks } = await owner.get(`${base}/days/today`)
  const open = tasks.filter((task) => task.state === 'open')
  const measured = open.find(isCount)
  const amount = open.find((task) => task.ruleId === 'rotifer-feed') ?? open.find((task) => task.amount !== null)
  if (!measured || !amount) throw new Error('The demo room has nothing open to count or to feed today')
  await writeNotes({ caretaker, base, cultureId: ids.cultures })
  return {
    ...{ demo, ids, cookies: { owner: owner.cookie, caretaker: caretaker.cookie, viewer: viewer.cookie } },
    ...{ measured, amount, emptyRoomId: empty.id, joinPath: new URL(invitation.link, demo.origin).pathname },
    conflict: await meetConflict({ caretaker, standIn, base, task: measured }),
  }
}

/** One count and nothing else has to be recorded. */
const isCount = ({ fields }) =>
  fields.some(({ type }) => type === 'count') &&
  fields.every(({ type, isRequired }) => isRequired === (type === 'count'))

const emptyRoom = {
  name: 'Empty room',
  timeZone: 'Europe/Lisbon',
  units: 'metric',
  lightsOnAt: '08:00',
  lightsOffAt: '20:00',
  salinity: 33,
  temperatureC: 26,
}

async function writeNotes({ caretaker, base, cultureId }) {
  await caretaker.post(`${base}/notes`, { text: 'The fine sieve hangs over the sink now.', isWorry: false })
  await caretaker.post(`${base}/notes`, {
    text: 'Bubbles less than it did; look at its air stone.',
    isWorry: true,
    subjectId: cultureId,
  })
}

/** Two sign a task off; the answer to the second is kept, and all is taken back. */
async function meetConflict({ caretaker, standIn, base, task }) {
  const field = task.fields.find((each) => each.type === 'count')
  const body = {
    values: { [field.name]: { animals: Array.from({ length: field.replicates }, () => 8), volumeMl: field.volumeMl } },
    confirmed: task.fields.map(({ name }) => name),
  }
  const path = `${base}/tasks/${task.id}`
  await caretaker.post(`${path}/sign-off`, body)
  const conflict = await standIn.post(`${path}/sign-off`, body, [409])
  await caretaker.post(`${path}/undo`, {})
  return conflict
}
