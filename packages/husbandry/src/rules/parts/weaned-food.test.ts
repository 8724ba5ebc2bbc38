import type { TaskContent } from '@fryward/shared'
import { describe, expect, test } from 'vitest'
import { saidTitle } from '../../testing/said-title.ts'
import { onlyDraft, SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { pairFeed } from '../broodstock/pair-feed.ts'
import { juvenileFeed } from '../juveniles/juvenile-feed.ts'
import { juvenilePlace } from '../juveniles/juvenile-place.ts'
import { larvalArtemiaFeed } from '../larvae/artemia-feed.ts'
import { larvalMove } from '../larvae/larval-move.ts'
import { larvalWean } from '../larvae/larval-wean.ts'

const date = '2026-03-10'
const seahorse = 'hippocampus-erectus'
const clownfish = 'amphiprion-ocellaris'

/** Whatever a task says but why, in one text. */
const whole = (draft: { content: { title: object; steps: object; fields: object } } | undefined) =>
  JSON.stringify([draft?.content.title, draft?.content.steps, draft?.content.fields])

describe('young that are weaned to frozen food', () => {
  test('are offered it by itself and with their Artemia, and the feeding says so', () => {
    const room = new SnapshotBuilder()
    // Day 58: two days after it is first offered.
    const batch = room.batch({ species: seahorse, hatchedOn: '2026-01-10', larvae: 60 })
    const [feed] = room.drafts(date, [larvalArtemiaFeed]).drafts
    expect(saidTitle(feed)).toMatch(/Artemia nauplii, first feed, frozen food first$/)
    expect(signOff(larvalArtemiaFeed, feed!, { taken: 'some' }).facts.at(-1)).toEqual({
      kind: 'feeding',
      subjectId: batch.id,
      data: { food: 'frozen', note: 'Some take it.' },
    })
    const alone = onlyDraft(room.drafts(date, [larvalWean]))
    expect(saidTitle(alone)).toMatch(/frozen food/)
    for (const draft of [feed, alone]) {
      expect(whole(draft)).toMatch(/Thaw it/)
      expect(whole(draft)).not.toMatch(/dry food/i)
    }
  })

  test('get it weighed and drained once nearly all take it, by what a seahorse weighs', () => {
    const room = new SnapshotBuilder()
    const batch = room.batch({ species: seahorse, hatchedOn: '2026-01-05', larvae: 200 })
    room.fact('feeding', batch.id, '2026-03-03T07:10:00.000Z', { food: 'frozen', note: 'Nearly all take it.' })
    const { drafts } = room.drafts(date, [larvalWean])
    expect(drafts.length).toBeGreaterThanOrEqual(2)
    // Day 63: 63.2 mm and 0.38 g (Lin et al. 2008), a fifth of it a day at the most (Woods 2005).
    const dayG = drafts.reduce((sum, { content }) => sum + (content.amount?.value ?? 0), 0)
    expect(dayG).toBeGreaterThan(200 * 0.38 * 0.1)
    expect(dayG).toBeLessThan(200 * 0.38 * 0.2 + 0.2)
    expect(signOff(larvalWean, drafts[0]!).facts).toEqual([
      { kind: 'feeding', subjectId: batch.id, data: { food: 'frozen', amountG: drafts[0]?.content.amount?.value } },
    ])
    room.tank({ kind: 'grow_out', volumeL: 500 })
    const [move] = room.drafts('2026-04-10', [larvalMove]).drafts
    expect(whole(move)).toMatch(/frozen food in the evening/)
    expect(whole(move)).not.toMatch(/dry food/)
  })

  test('and young of dry food that share their tank get each their own, in one task', () => {
    const room = new SnapshotBuilder()
    const tankId = room.tank({ kind: 'grow_out' }).id
    const elder = room.group({ species: clownfish, settledOn: '2026-01-10', tankId, number: 40 })
    const younger = room.group({ species: seahorse, settledOn: '2026-02-20', tankId, number: 60 })
    const [feed] = room.drafts(date, [juvenileFeed]).drafts
    expect(saidTitle(feed)).toMatch(/^[\d.]+ g dry food, [\d.]+ g frozen food, first feed, for Group 2 too$/)
    const given = signOff(juvenileFeed, feed!, { amountG: 1.5, otherG: 4 }).facts
    expect(given).toEqual([
      { kind: 'feeding', subjectId: elder.id, data: { food: 'dry', amountG: 1.5 } },
      { kind: 'feeding', subjectId: younger.id, data: { food: 'frozen', amountG: 4 } },
    ])
    expect(signOff(juvenileFeed, feed!).facts.map(({ data }) => data)).toEqual([
      { food: 'dry', amountG: feed?.content.amount?.value },
      { food: 'frozen', amountG: expect.any(Number) },
    ])
    room.snapshot.room.lightsOffAt = '18:00'
    room.group({ species: clownfish, settledOn: date, tankId, number: 30 })
    const [{ steps }] = room.drafts(date, [juvenileFeed]).drafts.map(({ content }) => content) as [TaskContent]
    expect(steps.flatMap(({ text, isHeading }) => (isHeading ? [text] : []))).toEqual([
      'For Group 1, Group 3: dry food',
      'For Group 2: frozen food',
    ])
    // Each stands over its own meal's steps, and what is said of both stands before either.
    const place = (words: RegExp) => steps.findIndex(({ text }) => words.test(text))
    expect(place(/do better on smaller feeds/)).toBe(0)
    expect(place(/^For Group 1/)).toBe(1)
    expect(place(/over the whole surface/)).toBe(place(/^For Group 1/) + 1)
    expect(place(/Thaw it/)).toBe(place(/^For Group 2/) + 1)
  })

  test('are placed once they take it and weigh what a clownfish does that is placed', () => {
    const room = new SnapshotBuilder()
    const group = room.group({ species: seahorse, settledOn: '2026-02-01', number: 40 })
    const measured = (lengthMm: number) =>
      room.fact('count', group.id, `${date}T05:00:00.000Z`, { of: 'juveniles', animals: [40], lengthMm })
    measured(50)
    expect(room.drafts(date, [juvenilePlace]).drafts).toEqual([])
    measured(66)
    expect(whole(onlyDraft(room.drafts(date, [juvenilePlace])))).toMatch(/Those that take frozen food in front of you/)
  })
})

test('a pair of seahorses gets frozen food at each feed, a pair of clownfish dry food by turns', () => {
  const foods = (species: string) => {
    const room = new SnapshotBuilder()
    room.pair({ species })
    return room.drafts(date, [pairFeed]).drafts.map((draft) => saidTitle(draft).split(',')[0])
  }
  expect(foods(seahorse)).toEqual(['Feed frozen food', 'Feed frozen food'])
  expect(foods(clownfish)).toEqual(['Feed frozen food', 'Feed dry food'])
})

test('a task that was kept before frozen food was one of its own is signed off as the dry food that it asked for', () => {
  const room = new SnapshotBuilder()
  const group = room.group({ species: seahorse, settledOn: '2026-02-20', number: 60 })
  const [feed] = room.drafts(date, [juvenileFeed]).drafts
  const kept = { ...feed!, context: { parts: [{ groupId: group.id, share: 1 }] } }
  expect(signOff(juvenileFeed, kept).facts).toEqual([
    { kind: 'feeding', subjectId: group.id, data: { food: 'dry', amountG: feed?.content.amount?.value } },
  ])
})
