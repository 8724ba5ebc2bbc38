import { afterAll, beforeAll, expect, test } from 'vitest'
import { listen } from '../api/event-stream.ts'
import { type FullRoom, openFullRoom } from '../api/full-room.ts'
import { readOpenApi } from '../api/open-api.ts'
import { openWorld, type World } from '../support/world.ts'
import { bytesOf, chance, requestsOf, sendBytes, sendRequest } from './generated-requests.mjs'

let world: World
let full: FullRoom

beforeAll(async () => {
  world = await openWorld()
  full = await openFullRoom(world)
})
afterAll(() => world.close())

const patienceMs = 30_000

// `npm run fuzz` sends a hundred thousand; these are the first of another seed.
test('made-up requests, signed out and in, and bytes on bare sockets end in no error of ours and no silence', async () => {
  const origin = await listen(world)
  const address = { host: '127.0.0.1', port: Number(new URL(origin).port) }
  const random = chance(2)
  const known = {
    ...{ roomId: [full.roomId], tankId: [full.pairTank.id, full.larvalTank.id], cultureId: [full.culture.id] },
    ...{ pairId: [full.pair.id], clutchId: [full.clutch.id], batchId: [full.batch.id], date: ['today', 'tomorrow'] },
    subjectId: [full.roomId, full.pair.id, full.culture.id],
  }
  const next = requestsOf(await readOpenApi(world), { random, known })
  const outcomes = new Map<string, number>()
  const bad: string[] = []
  const once = async () => {
    if (random() < 0.15) {
      const bytes = bytesOf(random)
      const outcome = await sendBytes(address, bytes, patienceMs)
      return { outcome, told: JSON.stringify(bytes.toString('latin1')) }
    }
    const request = next()
    // Signing out is tried by strangers: whoever is in is to stay in.
    const isIn = random() < 0.75 && request.id !== 'signOut'
    const outcome = await sendRequest(origin, request, { cookie: isIn ? full.owner.cookie : undefined, patienceMs })
    return { outcome, told: `${request.method} ${request.url} ${String(request.body ?? '')}` }
  }
  const hand = async () => {
    for (let sent = 0; sent < 50; sent += 1) {
      const { outcome, told } = await once()
      outcomes.set(outcome, (outcomes.get(outcome) ?? 0) + 1)
      if (outcome === 'hang' || /^5(?!03)/.test(outcome)) bad.push(`${outcome}: ${told.slice(0, 400)}`)
    }
  }
  await Promise.all(Array.from({ length: 8 }, hand))
  expect(bad).toEqual([])
  // What was made up was not all turned away at the door.
  for (const status of ['200', '201', '400', '401', '404']) expect(outcomes.get(status), status).toBeGreaterThan(0)
})
