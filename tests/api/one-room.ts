import type { AuditEntry } from '@fryward/shared'
import { afterAll, beforeAll, beforeEach } from 'vitest'
import { openWorld, type World } from '../support/world.ts'
import { type FullRoom, openFullRoom } from './full-room.ts'
import { type Makers, makersIn } from './makers.ts'

// Each file of tests has a module of these to itself; they are set before its first test.
export let world: World
export let full: FullRoom
export let roomId: string
export let make: Makers

/** All tests of the file that calls this write into one full room; a minute goes by before each. */
export function inOneRoom(): void {
  beforeAll(async () => {
    world = await openWorld()
    full = await openFullRoom(world)
    roomId = full.roomId
    make = makersIn(world, full)
  })
  afterAll(() => world.close())
  beforeEach(() => world.clock.advanceMinutes(1))
}

/** What was written into that room last. */
export async function newestAudit(): Promise<AuditEntry> {
  return (await world.ok(full.owner, 'listAudit', { params: { roomId }, query: { limit: 1 } })).entries[0]!
}
