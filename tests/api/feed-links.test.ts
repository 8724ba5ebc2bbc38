import { describe, expect, test } from 'vitest'
import { minutesFrom } from './full-room.ts'
import { full, inOneRoom, make, roomId, world } from './one-room.ts'
import { send } from './send.ts'

inOneRoom()

describe('a feed link', () => {
  test('a feed link is made once, not to a backup, and ends no earlier than it began', async () => {
    const link = await make.feedLink()
    const again = (body: object) =>
      send(world, full.owner, 'createFeedLink', {
        params: { roomId },
        body: { batchId: link.batchId, cultureId: link.cultureId, fromOn: make.today(), ...body },
      })
    const sentence = async (body: object) => {
      const { problem } = await again(body)
      expect(problem?.code).toBe('wrong_state')
      return problem?.detail
    }
    expect(await sentence({})).toContain('already')
    const backup = await make.culture({ isBackup: true })
    expect(await sentence({ cultureId: backup.id })).toContain('backup')
    const early = await world.call(full.owner, 'endFeedLink', {
      params: { roomId, feedLinkId: link.id },
      body: { untilOn: '2026-01-01', version: link.version },
    })
    expect(early.problem?.fields).toMatchObject([{ path: 'untilOn' }])
  })

  test('a batch that ends is fed from nowhere from tomorrow on', async () => {
    const link = await make.feedLink()
    const batches = await world.ok(full.owner, 'listLarvalBatches', { params: { roomId } })
    const { version } = batches.find((each) => each.id === link.batchId)!
    await world.ok(full.owner, 'endLarvalBatch', {
      params: { roomId, batchId: link.batchId },
      body: { reason: 'all moved to grow-out', version },
    })
    const links = await world.ok(full.owner, 'listFeedLinks', { params: { roomId } })
    expect(links.find((each) => each.id === link.id)?.untilOn).toBe(make.today())
  })

  test('a culture that ends feeds nobody from tomorrow on', async () => {
    const source = await make.culture()
    const fed = await make.batch()
    const link = (fromOn: string, batchId = fed.id) =>
      world.ok(full.owner, 'createFeedLink', { params: { roomId }, body: { batchId, cultureId: source.id, fromOn } })
    const running = await link(make.today())
    const planned = await link(minutesFrom(world, 3 * 1440).slice(0, 10), (await make.batch()).id)
    await world.ok(full.owner, 'endCulture', {
      params: { roomId, cultureId: source.id },
      body: { reason: 'crashed overnight', version: source.version },
    })
    const links = await world.ok(full.owner, 'listFeedLinks', { params: { roomId } })
    expect(links.find((each) => each.id === running.id)?.untilOn).toBe(make.today())
    expect(links.map((each) => each.id)).not.toContain(planned.id)
  })
})
