import { expect, test } from 'vitest'
import { SnapshotBuilder } from '../testing/snapshot-builder.ts'
import { culturesFeeding, culturesLinked } from './feed-links.ts'

const date = '2026-03-10'
const startedAt = '2026-02-01T08:00:00.000Z'

test('a link feeds from its first day to its last, both of them whole', () => {
  const linked = (fromOn: string, untilOn: string | null) => {
    const room = new SnapshotBuilder()
    const batch = room.batch({ hatchedOn: '2026-03-05' })
    const culture = room.culture({ startedAt })
    room.feedLink(batch, culture, fromOn)
    room.snapshot.feedLinks[0]!.untilOn = untilOn
    return culturesLinked(room.build(), batch, date).length === 1
  }
  expect(linked(date, null)).toBe(true)
  expect(linked('2026-03-11', null)).toBe(false)
  expect(linked('2026-03-06', date)).toBe(true)
  expect(linked('2026-03-06', '2026-03-11')).toBe(true)
  expect(linked('2026-03-06', '2026-03-09')).toBe(false)
})

test('the oldest link is the first choice, of two of a day the one that was made first, and a backup the last', () => {
  const room = new SnapshotBuilder()
  const batch = room.batch({ hatchedOn: '2026-03-05' })
  const [backup, late, first, second, elsewhere] = [true, false, false, false, false].map((isBackup) =>
    room.culture({ startedAt, isBackup }),
  )
  room.feedLink(batch, backup!, '2026-03-05')
  room.feedLink(batch, late!, '2026-03-08')
  room.feedLink(batch, first!, '2026-03-06')
  room.feedLink(batch, second!, '2026-03-06')
  // Linked twice it is one culture; what another batch eats from is none of this one's.
  room.feedLink(batch, first!, '2026-03-09')
  room.feedLink(room.batch({ hatchedOn: '2026-03-05' }), elsewhere!, '2026-03-05')
  const ids = [first, second, late, backup].map((culture) => culture!.id)
  const orders = [(links: unknown[]) => links, (links: unknown[]) => links.reverse()]
  for (const order of orders) {
    order(room.snapshot.feedLinks)
    expect(culturesLinked(room.build(), batch, date).map(({ id }) => id)).toEqual(ids)
    expect(culturesFeeding(room.build(), batch, date).map(({ id }) => id)).toEqual(ids)
  }
})
