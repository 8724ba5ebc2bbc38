import { expect, test } from 'vitest'
import { saidTitle } from '../../testing/said-title.ts'
import { SnapshotBuilder } from '../../testing/snapshot-builder.ts'
import { pairFeed } from '../broodstock/pair-feed.ts'
import { juvenileFeed } from '../juveniles/juvenile-feed.ts'
import { larvalWean } from '../larvae/larval-wean.ts'

const date = '2026-03-10'
const instead = 'For lined seahorse frozen food in its place'

test.each([
  ['hippocampus-erectus', true],
  ['amphiprion-ocellaris', false],
])('dry food is not what %s are fed on: %s', (species, isFrozen) => {
  const room = new SnapshotBuilder()
  const settledOn = '2026-02-01'
  room.group({ species, settledOn, tankId: room.tank({ kind: 'grow_out' }).id, number: 40 })
  room.batch({ species, hatchedOn: '2026-01-20', larvae: 60 })
  for (const rule of [juvenileFeed, larvalWean]) {
    const { drafts } = room.drafts(date, [rule])
    expect(drafts.length).toBeGreaterThan(0)
    for (const { content } of drafts) expect(content.steps.some(({ text }) => text.startsWith(instead))).toBe(isFrozen)
  }
})

test('a pair of them gets frozen food at each feed, a pair of clownfish dry food by turns', () => {
  const foods = (species: string) => {
    const room = new SnapshotBuilder()
    room.pair({ species })
    return room.drafts(date, [pairFeed]).drafts.map((draft) => saidTitle(draft).split(',')[0])
  }
  expect(foods('hippocampus-erectus')).toEqual(['Feed frozen food', 'Feed frozen food'])
  expect(foods('amphiprion-ocellaris')).toEqual(['Feed frozen food', 'Feed dry food'])
})
