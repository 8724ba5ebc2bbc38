import { describe, expect, test } from 'vitest'
import { husbandryDay } from '../calendar/husbandry-day.ts'
import { SnapshotBuilder } from '../testing/snapshot-builder.ts'
import { harvestRound, hatchedAt, hatchVessels, keptHarvest } from './artemia-hatch.ts'

describe('a hatch of Artemia', () => {
  test('is harvested with the round that begins within a quarter of an hour of it, or the next', () => {
    // Rounds at 07:00, 12:30 and 18:30.
    const { snapshot } = new SnapshotBuilder()
    const at = (time: string) => {
      const found = harvestRound(snapshot, `2026-03-10T${time}:00.000Z`)
      return `${found.day.date} ${found.round.id} ${found.at.slice(11, 16)}`
    }
    expect(at('07:15')).toBe('2026-03-10 morning 07:00')
    expect(at('07:16')).toBe('2026-03-10 midday 12:30')
    // Whoever has fed last comes back for three hours more: by morning they would have starved for half a night.
    expect(at('18:46')).toBe('2026-03-10 evening 18:46')
    expect(at('21:30')).toBe('2026-03-10 evening 21:30')
    expect(at('21:31')).toBe('2026-03-11 morning 07:00')
  })

  test('of a slow lot takes a tenth longer than is published', () => {
    // About 24 h at 28 C, 36 at 20 C: general literature, from memory.
    expect(hatchedAt({ temperatureC: 28 }, '2026-03-10T07:00:00.000Z')).toBe('2026-03-11T09:24:00.000Z')
    expect(hatchedAt({ temperatureC: 20 }, '2026-03-10T07:00:00.000Z')).toBe('2026-03-11T22:36:00.000Z')
  })

  test('is food from the cold for a day: what was harvested a day before the first round is, an hour more is not', () => {
    // Up to 24 h under 10 C: Ghent Univ. shrimp nutrition course, Artemia cold storage.
    const kept = (harvestedAt: string) => {
      const room = new SnapshotBuilder()
      const startedAt = '2026-02-01T08:00:00.000Z'
      const vessel = room.culture({ kind: 'artemia_hatch', strain: null, temperatureC: 28, volumeL: 2, startedAt })
      const parts = [{ to: 'chilled_reserve' as const, volumeL: 2 }]
      room.fact('harvest', vessel.id, harvestedAt, { volumeL: 2, parts })
      const day = husbandryDay({ room: room.snapshot.room, date: '2026-03-10' })
      return keptHarvest(room.build(), vessel, day) !== null
    }
    expect([kept('2026-03-09T07:00:00.000Z'), kept('2026-03-09T06:00:00.000Z')]).toEqual([true, false])
  })

  // Metabolism stops for good above 33 C: Lavens, Thongrod & Sorgeloos 2000, ch. 6 (Blackwell). Under 15 C nothing is published.
  test('is begun in no vessel in which cysts would die or lie still', () => {
    const room = new SnapshotBuilder()
    for (const temperatureC of [14.9, 15, 33, 33.1])
      room.culture({
        ...{ name: `${temperatureC}`, kind: 'artemia_hatch', strain: null, temperatureC },
        startedAt: '2026-02-01T08:00:00.000Z',
      })
    expect(hatchVessels(room.build()).map(({ name }) => name)).toEqual(['15', '33'])
  })
})
