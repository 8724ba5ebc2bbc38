import { randomUUID } from 'node:crypto'
import { readdir } from 'node:fs/promises'
import { maximumPhotoBytes, type Photo, PhotoSchema, ProblemSchema } from '@fryward/shared'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { openWorld, type Person, type World } from '../support/world.ts'
import { fingerprintOf } from './fingerprint.ts'
import { type FullRoom, openFullRoom } from './full-room.ts'
import { hiddenPlace, picture } from './picture.ts'

let world: World
let full: FullRoom
let neighbour: FullRoom

beforeAll(async () => {
  world = await openWorld()
  neighbour = await openFullRoom(world, { name: 'Next door' })
  full = await openFullRoom(world)
})
afterAll(() => world.close())

type Sent = {
  person?: Person | null
  image?: Buffer | string
  type?: string
  query?: Record<string, string>
  key?: string
}
async function add({ person = full.standIn, image = picture(), type = 'image/png', query = {}, key }: Sent = {}) {
  const answer = await world.app.inject({
    method: 'POST',
    url: `/api/v1/rooms/${full.roomId}/photos`,
    query: { subjectId: full.pair.id, ...query },
    headers: {
      host: 'localhost:3000',
      'content-type': type,
      ...(person ? { cookie: person.cookie } : {}),
      ...(key ? { 'idempotency-key': key } : {}),
    },
    payload: image,
  })
  return { status: answer.statusCode, headers: answer.headers, json: answer.json<unknown>() }
}
const added = async (sent: Sent = {}): Promise<Photo> => PhotoSchema.parse((await add(sent)).json)
const file = (photo: Photo, size: string, person: Person = full.viewer, more: Record<string, string> = {}) =>
  world.app.inject({
    url: `/api/v1/rooms/${full.roomId}/photos/${photo.id}/${size}`,
    headers: { host: 'localhost:3000', cookie: person.cookie, ...more },
  })
const list = () => world.ok(full.viewer, 'listPhotos', { params: { roomId: full.roomId } })
const filesKept = async () =>
  (await readdir(world.photosFolder, { recursive: true })).filter((name) => name.endsWith('.jpg'))

test('a photo stands with its record, is listed, and has its audit row', async () => {
  const fact = await world.ok(full.standIn, 'recordFact', {
    params: { roomId: full.roomId },
    body: { kind: 'observation', subjectId: full.pair.id, data: { signs: ['eggs_seen'] } },
  })
  const photo = await added({ query: { factId: fact.id, caption: 'eggs on the tile' } })
  expect(photo).toMatchObject({
    ...{ subjectId: full.pair.id, factId: fact.id, caption: 'eggs on the tile', width: 800, height: 600 },
    ...{ addedAt: world.clock.now(), addedByName: full.standIn.name },
  })
  expect(await list()).toContainEqual(photo)
  const { entries } = await world.ok(full.owner, 'listAudit', { params: { roomId: full.roomId }, query: { limit: 1 } })
  expect(entries[0]).toMatchObject({ action: 'photo.add', subjectId: full.pair.id, detail: { photoId: photo.id } })
})

test('its people see it whole and small, as JPEG, kept by their own browser only', async () => {
  const photo = await added()
  const [whole, small] = [await file(photo, 'full'), await file(photo, 'thumbnail')]
  for (const answer of [whole, small]) {
    expect(answer.statusCode).toBe(200)
    expect(answer.headers['content-type']).toBe('image/jpeg')
    expect(answer.headers['cache-control']).toMatch(/^private/)
    expect([...answer.rawPayload.subarray(0, 3)]).toEqual([0xff, 0xd8, 0xff])
  }
  expect(whole.rawPayload.length).toBe(photo.bytes)
  expect(small.rawPayload.length).toBeLessThan(whole.rawPayload.length)
  expect((await file(photo, 'full', neighbour.owner)).statusCode).toBe(404)
  // What a browser has is not sent to it again, and it asks each time: it may have been taken back.
  const again = await file(photo, 'full', full.standIn, { 'if-none-match': String(whole.headers.etag) })
  expect([again.statusCode, again.rawPayload.length]).toEqual([304, 0])
  expect((await file(photo, 'huge')).statusCode).toBe(400)
})

test('nothing of what the file said about its place is kept', async () => {
  expect(picture().includes(hiddenPlace)).toBe(true)
  const photo = await added()
  for (const size of ['full', 'thumbnail']) {
    const { rawPayload } = await file(photo, size)
    expect(rawPayload.includes('38.7223')).toBe(false)
  }
})

test('the same picture twice is one file and two photos', async () => {
  const image = picture({ shade: 77 })
  const first = await added({ image })
  const before = await filesKept()
  const second = await added({ image })
  expect(second.id).not.toBe(first.id)
  expect(await filesKept()).toEqual(before)
})

test('a photo whose answer was lost is one photo however often it is sent again', async () => {
  const [image, key] = [picture({ shade: 33 }), randomUUID()]
  const count = async () => (await list()).length
  const before = await count()
  const answers = await Promise.all([1, 2, 3].map(() => add({ image, key })))
  answers.push(await add({ image, key }))
  for (const answer of answers) expect([answer.status, answer.json]).toEqual([201, answers[0]!.json])
  expect(await count()).toBe(before + 1)
})

test('the key of one photo does for no other picture, and for no other caption', async () => {
  const key = randomUUID()
  await add({ image: picture({ shade: 34 }), key })
  const others = [await add({ image: picture({ shade: 35 }), key }), await add({ query: { caption: 'eggs' }, key })]
  for (const { status, json } of others) {
    expect(status).toBe(409)
    expect(ProblemSchema.parse(json).code).toBe('idempotency_mismatch')
  }
})

test('a picture larger than a screen is made smaller', async () => {
  const photo = await added({ image: picture({ width: 3600, height: 900 }) })
  expect([photo.width, photo.height]).toEqual([2400, 600])
})

test('what is no photo, belongs elsewhere or is too large is refused, and leaves no row', async () => {
  const before = await fingerprintOf(world, full.roomId)
  const otherFact = await world.database.prisma.fact.findFirstOrThrow({
    where: { roomId: full.roomId, subjectId: full.culture.id },
  })
  const wrong: [string, Sent, number][] = [
    ['text', { type: 'text/plain', image: 'hello' }, 415],
    ['JSON', { type: 'application/json', image: '{}' }, 415],
    ['a GIF', { type: 'image/gif', image: 'GIF89a' }, 415],
    ['SVG', { type: 'image/svg+xml', image: '<svg xmlns="http://www.w3.org/2000/svg"/>' }, 415],
    ['SVG that calls itself PNG', { image: '<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"/>' }, 400],
    ['no picture', { image: Buffer.from('not a picture at all') }, 400],
    ['half a picture', { image: picture().subarray(0, 400) }, 400],
    ['nothing', { image: Buffer.alloc(0) }, 415],
    ['too many bytes', { image: Buffer.alloc(maximumPhotoBytes + 1) }, 413],
    ['a subject that is none', { query: { subjectId: 'nothing' } }, 400],
    ["another room's subject", { query: { subjectId: neighbour.pair.id } }, 400],
    ['a record about something else', { query: { factId: otherFact.id } }, 400],
    ['a caption that is too long', { query: { caption: 'x'.repeat(301) } }, 400],
    ['a caption with a zero byte', { query: { caption: 'a\u0000b' } }, 400],
    ['an unknown parameter', { query: { unheardOf: '1' } }, 400],
    ['a viewer', { person: full.viewer }, 403],
    ['a stranger', { person: null }, 401],
    ['a neighbour', { person: neighbour.owner }, 404],
  ]
  for (const [said, sent, status] of wrong) {
    const answer = await add(sent)
    expect([said, answer.status]).toEqual([said, status])
    expect(answer.headers['content-type']).toMatch(/^application\/problem\+json/)
    expect(ProblemSchema.parse(answer.json).detail).not.toBe('')
  }
  expect(await fingerprintOf(world, full.roomId)).toEqual(before)
})

test('a stand-in takes back their own photo only, and what is taken back is off the list and gone from its address', async () => {
  const own = await added()
  const others = await added({ person: full.caretaker })
  const strike = (photo: Photo) =>
    world.call(full.standIn, 'strikePhoto', { params: { roomId: full.roomId, photoId: photo.id } })
  expect((await strike(others)).problem?.code).toBe('not_allowed')
  expect((await strike(own)).status).toBe(200)
  expect((await strike(own)).problem?.code).toBe('not_found')
  expect((await file(own, 'full')).statusCode).toBe(404)
  expect((await file(own, 'thumbnail', full.owner)).statusCode).toBe(404)
  const ids = (await list()).map((photo) => photo.id)
  expect([ids.includes(own.id), ids.includes(others.id)]).toEqual([false, true])
})

test('what a photo shows is the owner’s to say; it is among the pictures of what things look like here until it is taken off', async () => {
  const photo = await added()
  const params = { roomId: full.roomId, photoId: photo.id }
  expect(photo.shows).toBeNull()
  const mark = (person: Person) => world.call(person, 'markPhoto', { params, body: { shows: 'eggs_eyed' } })
  expect((await mark(full.caretaker)).problem?.code).toBe('not_allowed')
  expect((await mark(full.owner)).body).toMatchObject({ id: photo.id, shows: 'eggs_eyed' })
  const looks = async () => world.ok(full.viewer, 'listLooks', { params: { roomId: full.roomId } })
  expect((await looks()).map(({ id }) => id)).toEqual([photo.id])
  await world.ok(full.owner, 'strikePhoto', { params })
  expect(await looks()).toEqual([])
})
