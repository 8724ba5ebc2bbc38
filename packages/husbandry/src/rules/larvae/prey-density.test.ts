import { describe, expect, test } from 'vitest'
import { speciesProfiles } from '../../species/index.ts'
import { SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { larvalPreyTopUp } from './prey-top-up.ts'

const date = '2026-03-10'
const volumeL = 20
// Rotifers per mL kept for clownfish larvae: 5-10 (A. clarkii, methods of a larval experiment), 6-8 (A. chrysogaster,
// Gopakumar, George & Jasmine 2001), 8-10 (A. sebae, Divya et al. 2011).
const kept = { lower: 5, upper: 10 }

/** Rotifers per mL after the morning's feed of a tank in which so many were counted; null where none is asked for. */
function afterMorning(leftPerMl: number): number | null {
  const room = new SnapshotBuilder()
  const culture = room.culture({ startedAt: '2026-02-01T08:00:00.000Z' })
  room.count(culture, '2026-03-10T06:30:00.000Z', [250, 250, 250])
  const tank = room.tank({ name: 'Nursery 1', volumeL, salinity: 27 })
  const batch = room.batch({ hatchedOn: '2026-03-07', tankId: tank.id, larvae: 200 })
  room.feedLink(batch, culture)
  const animals = Math.round(leftPerMl * 100)
  room.fact('count', batch.id, '2026-03-10T06:50:00.000Z', { of: 'prey_rotifers', animals: [animals], volumeMl: 100 })
  const morning = room.drafts(date, [larvalPreyTopUp]).drafts.find(({ roundId }) => roundId === 'morning')
  if (!morning) return null
  const fed = signOff(larvalPreyTopUp, morning).facts.find(({ kind }) => kind === 'feeding')
  if (fed?.kind !== 'feeding' || fed.data.animals === undefined) throw new Error('The feed says no number of animals')
  return leftPerMl + fed.data.animals / (volumeL * 1000)
}

describe('the rotifers kept for clownfish larvae', () => {
  test('are as many as larvae of the genus were reared with, however many were left', () => {
    for (const left of [0, 2, 4.9]) {
      const after = afterMorning(left)
      expect(after).toBeGreaterThan(kept.lower)
      // What a jug measures is no finer than a few per cent.
      expect(after).toBeLessThan(kept.upper * 1.05)
      expect(after).toBeGreaterThan(kept.upper * 0.95)
    }
  })

  test('are topped up when fewer than the lower end is left, and not before', () => {
    expect(afterMorning(kept.lower - 0.1)).not.toBeNull()
    expect(afterMorning(kept.lower + 0.1)).toBeNull()
  })
})

// 4-6 per mL in A. sebae (Divya et al. 2011) is the most that was tried; 0.5-3 in textbooks (from memory).
test('no clownfish is given more Artemia a feed than were tried, and each begins with few', () => {
  const clownfish = speciesProfiles.filter(({ id }) => /^(amphiprion|premnas)-/.test(id))
  expect(clownfish.length).toBeGreaterThan(2)
  for (const { id, feeding } of clownfish) {
    const { from, to } = feeding.artemiaPerMl.value
    expect(from, id).toBeLessThanOrEqual(1)
    expect(from, id).toBeGreaterThanOrEqual(0.5)
    expect(to, id).toBeGreaterThanOrEqual(from)
    expect(to, id).toBeLessThanOrEqual(6)
  }
})
