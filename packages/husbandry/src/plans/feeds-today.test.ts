import { describe, expect, test } from 'vitest'
import { husbandryDay } from '../calendar/husbandry-day.ts'
import { SnapshotBuilder } from '../testing/snapshot-builder.ts'
import { feedsToday } from './feeds-today.ts'

const date = '2026-03-10'
const early = '2026-02-01T08:00:00.000Z'

/** A young batch on rotifers, an older one that gets nauplii of the cone, and copepods linked to both. */
function room() {
  const built = new SnapshotBuilder()
  const rotifers = built.culture({ name: 'R1', startedAt: early })
  const cone = built.culture({ name: 'H1', kind: 'artemia_hatch', strain: null, temperatureC: 28, startedAt: early })
  const copepods = built.culture({ name: 'C1', kind: 'copepod', strain: null, volumeL: 10, startedAt: early })
  const young = built.batch({ name: 'Young', hatchedOn: '2026-03-07', tankId: built.tank({}).id })
  const old = built.batch({ name: 'Old', hatchedOn: '2026-02-20', tankId: built.tank({}).id })
  for (const batch of [young, old]) {
    built.feedLink(batch, rotifers)
    built.feedLink(batch, copepods)
  }
  const said = () => {
    const snapshot = built.build()
    const nameOf = (id: string) => [...snapshot.cultures, ...snapshot.batches].find((each) => each.id === id)?.name
    return feedsToday(snapshot, husbandryDay({ room: snapshot.room, date }))
      .map(({ batchId, cultureId, food }) => `${nameOf(batchId)}: ${food} of ${nameOf(cultureId)}`)
      .sort()
  }
  return { built, rotifers, cone, copepods, young, old, said }
}

describe('who eats from what on a day', () => {
  test('is by what each batch eats at its age, whatever it is linked to', () => {
    expect(room().said()).toEqual(['Old: artemia of H1', 'Young: rotifers of R1'])
  })

  test('names copepods on days on which they are harvested for a batch', () => {
    const { built, copepods, said } = room()
    built.fact('count', copepods.id, '2026-03-10T06:30:00.000Z', { of: 'culture', animals: [60], volumeMl: 10 })
    expect(said()).toContain('Young: copepods of C1')
    // Those on Artemia leave the nauplii to the small ones.
    expect(said()).not.toContain('Old: copepods of C1')
  })

  test('names what was given already too, once', () => {
    const { built, rotifers, young, old, said } = room()
    for (const { id } of [young, old])
      built.fact('feeding', id, '2026-03-10T07:30:00.000Z', { food: 'rotifers', fromCultureId: rotifers.id })
    expect(said()).toEqual(['Old: artemia of H1', 'Old: rotifers of R1', 'Young: rotifers of R1'])
  })
})
