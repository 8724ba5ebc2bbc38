import { describe, expect, test } from 'vitest'
import { husbandryDay } from '../calendar/husbandry-day.ts'
import { SnapshotBuilder } from '../testing/snapshot-builder.ts'
import { vesselToFeedFrom } from './artemia-hatch.ts'
import { naupliiJar } from './nauplii-jar.ts'

const date = '2026-03-10'
const at = (time: string) => `${date}T${time}:00.000Z`

function cones(...names: string[]) {
  const room = new SnapshotBuilder()
  const startedAt = '2026-02-01T08:00:00.000Z'
  const vessels = names.map((name) =>
    room.culture({ name, kind: 'artemia_hatch', strain: null, temperatureC: 28, volumeL: 2, startedAt }),
  )
  const harvest = (index: number, when: string) =>
    room.fact('harvest', vessels[index]!.id, when, { volumeL: 2, parts: [{ to: 'chilled_reserve', volumeL: 2 }] })
  const day = husbandryDay({ room: room.snapshot.room, date })
  return { room, vessels, harvest, day }
}

describe('the jar of a hatch', () => {
  const counted = (
    facts: (cone: ReturnType<typeof cones> & { count: (when: string, data: object) => void }) => void,
  ) => {
    const cone = cones('Cone')
    const count = (when: string, data: object) =>
      cone.room.fact('count', cone.vessels[0]!.id, when, { of: 'culture', animals: [30], volumeMl: 0.1, ...data })
    facts({ ...cone, count })
    return naupliiJar(cone.room.build(), cone.vessels[0]!, cone.day)?.perMl ?? null
  }

  test('is as dense as it was counted last since the harvest: 30 in a tenth of a millilitre are 300 per mL', () => {
    expect(
      counted(({ harvest, count }) => {
        harvest(0, at('07:00'))
        count(at('07:00'), { animals: [90] })
        count(at('07:10'), {})
        // What is grown of a count without a volume, or of anything else, is no density of the jar.
        count(at('07:20'), { volumeMl: undefined })
        count(at('07:30'), { of: 'prey_artemia', animals: [5], volumeMl: 10 })
      }),
    ).toBe(300)
    expect(
      counted(({ harvest, count }) => {
        harvest(0, at('07:00'))
        count(at('07:00'), { animals: [90], dilution: 2 })
      }),
    ).toBe(1800)
  })

  test('is unknown before it was counted, where none lived in it, and once it is discarded', () => {
    expect(counted(({ harvest }) => harvest(0, at('07:00')))).toBeNull()
    expect(counted(({ count }) => count(at('07:00'), {}))).toBeNull()
    // Counted before it was harvested it was another jar.
    expect(
      counted(({ harvest, count }) => {
        count(at('06:59'), {})
        harvest(0, at('07:00'))
      }),
    ).toBeNull()
    expect(
      counted(({ harvest, count }) => {
        harvest(0, at('07:00'))
        count(at('07:05'), { animals: [0] })
      }),
    ).toBeNull()
    expect(
      counted(({ harvest, count, room, vessels }) => {
        harvest(0, at('07:00'))
        count(at('07:05'), {})
        room.fact('care', vessels[0]!.id, at('07:30'), { act: 'discard' })
      }),
    ).toBeNull()
  })
})

test('a day is fed from what was harvested last, else from what is out first, else from the first cone', () => {
  const { room, vessels, harvest, day } = cones('B', 'C', 'A')
  const fedFrom = () => vesselToFeedFrom(room.build(), day)?.name
  const start = (index: number, when: string) => room.fact('care', vessels[index]!.id, when, { act: 'start_artemia' })
  expect(vesselToFeedFrom(new SnapshotBuilder().build(), day)).toBeNull()
  expect(fedFrom()).toBe('A')
  start(0, '2026-03-09T18:30:00.000Z')
  expect(fedFrom()).toBe('B')
  start(1, '2026-03-09T12:30:00.000Z')
  expect(fedFrom()).toBe('C')
  harvest(2, '2026-03-09T12:30:00.000Z')
  expect(fedFrom()).toBe('A')
  harvest(1, at('07:00'))
  expect(fedFrom()).toBe('C')
  harvest(0, at('06:50'))
  expect(fedFrom()).toBe('C')
})
