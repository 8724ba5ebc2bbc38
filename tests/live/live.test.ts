import { afterAll, beforeAll, expect, test } from 'vitest'
import { openWorld, type World } from '../support/world.ts'
import { live } from './life.ts'
import { summaryOf } from './tally.ts'

// One room for eighteen days, from thin cultures to larvae on their first Artemia, unless `npm run live` says otherwise.
const { LIVE_SEED = '1', LIVE_DAYS = '18', LIVE_ROOMS = '1', LIVE_TELL } = process.env
const given = { seed: Number(LIVE_SEED), days: Number(LIVE_DAYS), rooms: Number(LIVE_ROOMS) }

let world: World
beforeAll(async () => {
  world = await openWorld({ at: '2026-02-28T05:00:00.000Z' })
})
afterAll(() => world.close())

test(`keepers who do what the list says keep ${given.rooms} rooms for ${given.days} days`, async () => {
  const tally = await live(world, { ...given, print: console.log, tell: LIVE_TELL ? console.log : () => undefined })
  console.log(summaryOf(tally))
  // Nothing of what the list asks for is refused when it is done as it is asked.
  expect([...new Set(tally.refusals)]).toEqual([])
  expect(tally.hatchesMissed).toBe(0)
  expect(tally.starvedDays).toBe(0)
  expect(tally.underFloor).toBe(0)
  expect(tally.conesLost).toBe(0)
  // Without larvae all that would say little.
  if (given.days > 14) expect(tally.larvalDays).toBeGreaterThan(0)
}, 86_400_000)
