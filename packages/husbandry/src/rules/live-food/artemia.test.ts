import type { ClutchIntent } from '@fryward/shared'
import { describe, expect, test } from 'vitest'
import { addDays } from '../../calendar/husbandry-day.ts'
import { saidTitle } from '../../testing/said-title.ts'
import { onlyDraft, SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { larvalArtemiaFeed } from '../larvae/artemia-feed.ts'
import { artemiaDecapsulate } from './artemia-decapsulate.ts'
import { artemiaDiscard } from './artemia-discard.ts'
import { artemiaEnrich } from './artemia-enrich.ts'
import { artemiaHarvest } from './artemia-harvest.ts'
import { artemiaLotTest } from './artemia-lot-test.ts'
import { artemiaStart } from './artemia-start.ts'

const date = '2026-03-10'

/** Ocellaris in 20 L that take their first Artemia on day 5, and one hatcher of 2 L at 28 C. */
function room(hatchedOn: string) {
  const built = new SnapshotBuilder()
  const hatcher = built.culture({
    name: 'H1',
    kind: 'artemia_hatch',
    strain: null,
    volumeL: 2,
    temperatureC: 28,
    salinity: 30,
    startedAt: '2026-02-01T08:00:00.000Z',
  })
  const batch = built.batch({ hatchedOn, tankId: built.tank({ volumeL: 20 }).id })
  return { built, hatcher, batch }
}

describe('feeding Artemia', () => {
  test('begins on the species’ day with half an animal a mL, and reaches one within three days', () => {
    const amounts = (hatchedOn: string) =>
      room(hatchedOn)
        .built.drafts(date, [larvalArtemiaFeed])
        .drafts.map(({ content }) => content.amount?.value)
    // Day 4, day 5 (0.5 x 20,000), day 8 (1 x 20,000).
    expect(amounts('2026-03-05')).toEqual([])
    expect(amounts('2026-03-04')).toEqual([10_000, 10_000])
    expect(amounts('2026-03-01')).toEqual([20_000, 20_000])
  })

  test('what was counted as left is not given again; signing off records both', () => {
    const { built, batch, hatcher } = room('2026-03-01')
    const [draft] = built.drafts(date, [larvalArtemiaFeed]).drafts
    expect(signOff(larvalArtemiaFeed, draft!, { leftPerMl: 0.4 }).facts).toEqual([
      { kind: 'count', subjectId: batch.id, data: { of: 'prey_artemia', animals: [400], volumeMl: 1000 } },
      { kind: 'feeding', subjectId: batch.id, data: { food: 'artemia', animals: 20_000, fromCultureId: hatcher.id } },
      // Old enough to be weaned: a pinch of dry food went first.
      { kind: 'feeding', subjectId: batch.id, data: { food: 'dry' } },
    ])
    built.fact('count', batch.id, '2026-03-10T06:50:00.000Z', { of: 'prey_artemia', animals: [400], volumeMl: 1000 })
    expect(built.drafts(date, [larvalArtemiaFeed]).drafts[0]?.content.amount?.value).toBe(12_000)
  })

  test('is by larvae as well as by litres, never too thin to be found and never above three a mL', () => {
    const amount = (larvae: number) => {
      const built = new SnapshotBuilder()
      built.batch({ hatchedOn: '2026-03-01', tankId: built.tank({ volumeL: 40 }).id, larvae })
      return built.drafts(date, [larvalArtemiaFeed]).drafts[0]?.content.amount?.value
    }
    // Day 8 of 20: 500 x 8/20 = 200 a larva a day, the first of two feeds for 5.5 of 12 h. 50 larvae get the thinnest, 0.5 a mL of 40 L.
    expect([amount(50), amount(800), amount(5000)]).toEqual([20_000, 73_000, 120_000])
  })

  test('is by the litres from the first day where it is the first food, until looks say how much they take', () => {
    const built = new SnapshotBuilder()
    const tank = built.tank({ volumeL: 40 })
    const batch = built.batch({ hatchedOn: '2026-03-09', tankId: tank.id, larvae: 150, species: 'hippocampus-erectus' })
    const first = () => built.drafts('2026-03-11', [larvalArtemiaFeed]).drafts[0]?.content.amount?.value
    // One a mL, the most of the profile.
    expect(first()).toBe(40_000)
    const looked = (at: string, leftPerMl: number) => {
      built.fact('count', batch.id, at, { of: 'prey_artemia', animals: [leftPerMl * 1000], volumeMl: 1000 })
      built.fact('feeding', batch.id, at, { food: 'artemia', animals: 40_000 })
    }
    looked('2026-03-10T07:00:00.000Z', 0)
    looked('2026-03-10T12:30:00.000Z', 0.2)
    // 32,000 in five and a half hours, as long as to the next feed.
    expect(first()).toBe(32_000)
  })

  test('is more before a longer light', () => {
    const built = new SnapshotBuilder()
    const rounds = built.snapshot.room.rounds
    built.snapshot.room.rounds = rounds.filter(({ id }) => id !== 'midday')
    const tank = built.tank({ volumeL: 40, lightHours: 16 })
    built.batch({ hatchedOn: '2026-03-01', tankId: tank.id, larvae: 800 })
    const amounts = built.drafts(date, [larvalArtemiaFeed]).drafts.map(({ content }) => content.amount?.value)
    // 160,000 a day as above: 11.5 of the 16 lit hours lie before the evening round, 4.5 after it; said in two figures.
    expect(amounts).toEqual([120_000, 45_000])
  })

  test('what was found left is not counted on twice, where little was given with it', () => {
    const built = new SnapshotBuilder()
    const tank = built.tank({ volumeL: 20, lightHours: 16 })
    const batch = built.batch({ hatchedOn: '2026-02-25', tankId: tank.id, larvae: 100 })
    const looked = (at: string, leftPerMl: number, animals: number) => {
      const data = { of: 'prey_artemia' as const, animals: [leftPerMl * 1000], volumeMl: 1000 }
      built.fact('count', batch.id, at, data)
      built.fact('feeding', batch.id, at, { food: 'artemia', animals })
    }
    looked('2026-03-10T07:00:00.000Z', 0.5, 12_000)
    looked('2026-03-10T12:30:00.000Z', 0.5, 200)
    // They ate 12,000 in five and a half hours: of the half a mL nothing is left by the evening, and day 12 gets its feed.
    const { drafts } = built.drafts('2026-03-10', [larvalArtemiaFeed])
    expect(drafts.at(-1)).toMatchObject({ roundId: 'evening', content: { amount: { value: 10_000 } } })
  })

  test('is more where they are seen to eat all of it, feed after feed, and never above three a mL', () => {
    const built = new SnapshotBuilder()
    const tank = built.tank({ volumeL: 20 })
    const batch = built.batch({ hatchedOn: '2026-02-25', tankId: tank.id, larvae: 200 })
    const first = () => built.drafts('2026-03-12', [larvalArtemiaFeed]).drafts[0]?.content.amount?.value
    // Day 14: 500 x 14/20 x 200, for 5.5 of 12 h.
    expect(first()).toBe(32_000)
    const looked = (at: string, animals: number) => {
      built.fact('count', batch.id, at, { of: 'prey_artemia', animals: [0], volumeMl: 1000 })
      built.fact('feeding', batch.id, at, { food: 'artemia', animals })
    }
    looked('2026-03-11T07:00:00.000Z', 35_000)
    looked('2026-03-11T12:30:00.000Z', 35_000)
    // 35,000 gone in five and a half hours, as long as to the next feed; a quarter more is tried.
    expect(first()).toBe(44_000)
    looked('2026-03-11T18:00:00.000Z', 60_000)
    expect(first()).toBe(44_000)
    looked('2026-03-12T06:55:00.000Z', 60_000)
    looked('2026-03-12T12:00:00.000Z', 60_000)
    expect(built.drafts('2026-03-13', [larvalArtemiaFeed]).drafts[0]?.content.amount?.value).toBe(60_000)
  })

  test('is more too on the first two days without rotifers, though some was left while they ate those beside it', () => {
    const onDay = (day: number) => {
      const built = new SnapshotBuilder()
      const tank = built.tank({ volumeL: 20 })
      const batch = built.batch({ hatchedOn: addDays('2026-03-12', -day), tankId: tank.id, larvae: 200 })
      const looked = (at: string, leftPerMl: number, animals: number) => {
        built.fact('count', batch.id, at, { of: 'prey_artemia', animals: [leftPerMl * 1000], volumeMl: 1000 })
        built.fact('feeding', batch.id, at, { food: 'artemia', animals })
      }
      looked('2026-03-11T07:00:00.000Z', 0.2, 48_000)
      looked('2026-03-11T12:30:00.000Z', 0.2, 30_000)
      return built.drafts('2026-03-12', [larvalArtemiaFeed]).drafts[0]!.content.amount!.value
    }
    // The last day on rotifers is the twelfth; 48,000 go in five and a half hours, as long as to the next feed.
    expect([12, 13, 14, 15].map(onDay)).toEqual([48_000, 60_000, 60_000, 48_000])
  })

  test('is more by what they ate of rotifers, on the first two days without', () => {
    const first = (withRotifers: boolean, day = 13) => {
      const built = new SnapshotBuilder()
      const tank = built.tank({ volumeL: 40 })
      const batch = built.batch({ hatchedOn: addDays('2026-03-12', -day), tankId: tank.id, larvae: 200 })
      const seen = (of: 'prey_artemia' | 'prey_rotifers', at: string, perMl: number) =>
        built.fact('count', batch.id, at, { of, animals: [perMl * 1000], volumeMl: 1000 })
      seen('prey_artemia', '2026-03-11T07:00:00.000Z', 0.3)
      built.fact('feeding', batch.id, '2026-03-11T07:00:00.000Z', { food: 'artemia', animals: 44_000 })
      seen('prey_artemia', '2026-03-11T12:30:00.000Z', 0.3)
      if (withRotifers) seen('prey_rotifers', '2026-03-11T07:05:00.000Z', 8)
      if (withRotifers) seen('prey_rotifers', '2026-03-11T12:35:00.000Z', 6)
      return built.drafts('2026-03-12', [larvalArtemiaFeed]).drafts[0]!.content.amount!.value
    }
    // 44,000 nauplii in five and a half hours, as long as to the next feed; and of 2 rotifers a mL of 40 L, 0.58 ug against 2
    // dry (Yufera & Pascual 1989; Vanhaecke & Sorgeloos 1980), as much as 23,200 nauplii. A quarter more is tried of either.
    expect([first(false), first(true)]).toEqual([55_000, 84_000])
    expect(first(true, 15)).toBe(44_000)
  })

  test('the last feed is two hours before dark or earlier, where the rounds allow two', () => {
    const { built, batch } = room('2026-03-01')
    const rounds = () => built.drafts(date, [larvalArtemiaFeed]).drafts.map(({ roundId }) => roundId)
    // Lights off at 19:00; the evening round is at 18:30.
    expect(rounds()).toEqual(['morning', 'midday'])
    // By the light of their own tank; 16 hours where a tank for larvae has none of its own: until 23:00.
    const tank = built.snapshot.tanks.find(({ id }) => id === batch.tankId)!
    tank.lightHours = 13.5
    expect(rounds()).toEqual(['morning', 'midday', 'evening'])
    tank.lightHours = 13
    expect(rounds()).toEqual(['morning', 'midday'])
    tank.lightHours = null
    expect(rounds()).toEqual(['morning', 'midday', 'evening'])
  })

  test('is less by what was found left at the feed before, none where that is enough, and all of it after a night', () => {
    const { built } = room('2026-03-01')
    const amounts = (on = date) =>
      built.drafts(on, [larvalArtemiaFeed]).drafts.map(({ content }) => content.amount?.value)
    const [morning] = built.drafts('2026-03-09', [larvalArtemiaFeed]).drafts
    const given = (leftPerMl: number, at: string) => {
      for (const fact of signOff(larvalArtemiaFeed, morning!, { leftPerMl }).facts) built.append(fact, { at })
    }
    // 1 a mL of 20 L is wanted. What was left in the evening may be gone by the morning, and nobody has looked.
    given(0.4, '2026-03-09T18:30:00.000Z')
    expect(amounts()).toEqual([20_000, 20_000])
    given(0.4, '2026-03-10T07:05:00.000Z')
    expect(amounts()).toEqual([12_000])
    given(1.2, '2026-03-10T07:10:00.000Z')
    expect(amounts()).toEqual([])
    expect(amounts('2026-03-11')).toEqual([20_000, 20_000])
  })

  test('what was left at a feed is left at the next within eight hours, and later not without a look', () => {
    const second = (at: string) => {
      const { built } = room('2026-03-01')
      built.snapshot.room.rounds = [
        { id: 'first', name: 'First', at: '07:00' },
        { id: 'second', name: 'Second', at },
      ]
      built.snapshot.tanks[0]!.lightHours = 16
      const [morning] = built.drafts(date, [larvalArtemiaFeed]).drafts
      for (const fact of signOff(larvalArtemiaFeed, morning!, { leftPerMl: 0.4 }).facts)
        built.append(fact, { at: '2026-03-10T07:00:00.000Z' })
      return built.drafts(date, [larvalArtemiaFeed]).drafts.map(({ content }) => content.amount?.value)
    }
    expect(second('14:55')).toEqual([12_000])
    expect(second('15:05')).toEqual([20_000])
  })

  test('is less, and never none, by what two looks say they leave; nobody looking for a day, all of it again', () => {
    const built = new SnapshotBuilder()
    const batch = built.batch({ hatchedOn: '2026-03-01', tankId: built.tank({ volumeL: 20 }).id, larvae: 100 })
    const amounts = (on: string) =>
      built.drafts(on, [larvalArtemiaFeed]).drafts.map(({ roundId, content }) => [roundId, content.amount?.value])
    const looked = (leftPerMl: number, at: string) => {
      const data = { of: 'prey_artemia' as const, animals: [leftPerMl * 1000], volumeMl: 1000 }
      built.fact('count', batch.id, at, data)
      built.fact('feeding', batch.id, at, { food: 'artemia', animals: 10_000 })
    }
    // Day 8: 0.5 a mL in each of two feeds of the twelve lit hours. Of 2.5 a mL they leave 2.2 in five and a half hours.
    looked(2, '2026-03-09T07:00:00.000Z')
    expect(amounts(date)[0]).toEqual(['morning', 10_000])
    looked(2.2, '2026-03-09T12:30:00.000Z')
    // 2.7 less six and a half hours at 0.055 a mL: far more than is wanted, and a quarter is given with a look.
    expect(amounts(date)[0]).toEqual(['morning', 2500])
    expect(amounts('2026-03-11')[0]).toEqual(['morning', 10_000])
    // Less than the one a mL of a full feed was left: they might have eaten more.
    looked(0.8, '2026-03-10T18:30:00.000Z')
    expect(amounts('2026-03-11')[0]).toEqual(['morning', 10_000])
  })

  test('never asks a jar for more than it holds: what is left is the same part for all, and a jar used up is said', () => {
    const built = new SnapshotBuilder()
    const about = { kind: 'artemia_hatch', strain: null, volumeL: 2, temperatureC: 28 } as const
    const hatcher = built.culture({ ...about, name: 'H1', salinity: 30, startedAt: '2026-02-01T08:00:00.000Z' })
    const batches = [20, 40].map((volumeL) =>
      built.batch({ hatchedOn: '2026-03-01', name: `In ${volumeL} L`, tankId: built.tank({ volumeL }).id }),
    )
    const parts = [{ to: 'chilled_reserve' as const, volumeL: 2 }]
    built.fact('harvest', hatcher.id, '2026-03-10T06:00:00.000Z', { volumeL: 2, parts, keptMl: 300 })
    built.fact('count', hatcher.id, '2026-03-10T06:05:00.000Z', { of: 'culture', animals: [20], volumeMl: 0.1 })
    const feeds = () => built.drafts(date, [larvalArtemiaFeed]).drafts
    const asked = () => feeds().map(({ content }) => content.amount)
    // 1 a mL of 20 and of 40 L, two feeds each: 120,000, and the jar holds 300 x 200 = 60,000, half of it.
    const ml = (value: number) => ({ value, unit: 'mL' })
    expect(asked()).toEqual([ml(50), ml(50), ml(100), ml(100)])
    const data = { food: 'artemia', amountMl: 50, animals: 10_000, fromCultureId: hatcher.id } as const
    built.fact('feeding', batches[0]!.id, '2026-03-10T07:10:00.000Z', data, { taskId: built.nextId() })
    // Its task has been done and stays on the list; the others still get half: 50,000 are left for 100,000.
    expect(asked()).toEqual([ml(50), ml(50), ml(100), ml(100)])
    // Larvae that have been moved since ate of it too.
    const moved = '00000000-0000-4000-8000-000000000001'
    built.fact('feeding', moved, '2026-03-10T07:20:00.000Z', { ...data, amountMl: 248, animals: 49_600 })
    const heads = (value: number) => ({ value, unit: 'animals' })
    expect(asked()).toEqual([heads(20_000), heads(20_000), heads(40_000), heads(40_000)])
    expect(JSON.stringify(feeds()[0]?.content.steps)).toContain('the jar is used up')
  })

  test('is told in mL of the jar once that was counted at the harvest, and keeps both', () => {
    const { built, batch, hatcher } = room('2026-03-01')
    built.fact('care', hatcher.id, '2026-03-09T06:00:00.000Z', { act: 'start_artemia' })
    const harvest = onlyDraft(built.drafts(date, [artemiaHarvest]))
    // A screen under 150 µm holds nauplii of 400: FAO Fish. Tech. Pap. 361, sect. 4.3.1.
    expect(harvest.content.steps.flatMap(({ quantities }) => quantities.screen?.value ?? [])).toEqual([150])
    const count = { animals: [200, 210, 190], volumeMl: 0.1, dilution: 1 }
    for (const fact of signOff(artemiaHarvest, harvest, { count }).facts)
      built.append(fact, { at: '2026-03-10T06:45:00.000Z' })
    const [feed] = built.drafts(date, [larvalArtemiaFeed]).drafts
    // 20,000 nauplii at 2,000 a mL.
    expect(feed?.content.amount).toEqual({ value: 10, unit: 'mL' })
    expect(signOff(larvalArtemiaFeed, feed!, { amountMl: 8 }).facts[0]).toEqual({
      kind: 'feeding',
      subjectId: batch.id,
      data: { food: 'artemia', amountMl: 8, animals: 16_000, fromCultureId: hatcher.id },
    })
  })

  test('goes on past the calendar until nearly all take dry food, then tapers over three days', () => {
    const { built, batch } = room('2026-02-05')
    const amounts = (on: string) =>
      built.drafts(on, [larvalArtemiaFeed]).drafts.map(({ content }) => content.amount?.value)
    // Day 32, a week past the last day of the profile.
    expect(amounts(date)).toEqual([20_000, 20_000])
    const dry = (at: string, note: string) => built.fact('feeding', batch.id, at, { food: 'dry', note })
    dry('2026-03-09T18:30:00.000Z', 'Some take it.')
    dry('2026-03-10T07:00:00.000Z', 'Nearly all take it.')
    expect(amounts('2026-03-11')).toEqual([13_000, 13_000])
    expect(amounts('2026-03-12')).toEqual([6700, 6700])
    expect(amounts('2026-03-13')).toEqual([])
    // Those that spit it out again get all of it again.
    dry('2026-03-12T18:30:00.000Z', 'Hardly any take it.')
    expect(amounts('2026-03-13')).toEqual([20_000, 20_000])
  })
})

describe('starting cysts', () => {
  test('are wetted a day and an hour before the feed: 37,037 nauplii and a fifth more are 0.3 g', () => {
    const { built, hatcher } = room('2026-03-03')
    // Day 7 on the 11th: 0.833 a mL x 20,000 mL x 2 feeds, a tenth lost in the sieve, at 200,000 a gram.
    expect(((0.5 + (0.5 * 2) / 3) * 20_000 * 2) / 0.9 / 200_000).toBeCloseTo(0.185, 3)
    // With a fifth to spare 0.222, and a scale of tenths shows the next.
    const draft = onlyDraft(built.drafts(date, [artemiaStart]))
    expect(draft.content.amount).toEqual({ value: 0.3, unit: 'g' })
    // Needed at 07:00 on the 11th, 24 h at 28 C and a tenth: too late for that since the evening of the 9th, so at once.
    expect(draft.roundId).toBe('morning')
    expect(signOff(artemiaStart, draft, { cystsG: 0.4 }).facts).toEqual([
      {
        kind: 'care',
        subjectId: hatcher.id,
        data: { act: 'start_artemia', litres: 2, cystsG: 0.4, forDate: '2026-03-11' },
      },
    ])
  })

  test('cooler water is started in the evening, two nights before the feed', () => {
    const { built, hatcher } = room('2026-03-06')
    const start = (temperatureC: number) => {
      hatcher.temperatureC = temperatureC
      const draft = onlyDraft(built.drafts(date, [artemiaStart]))
      expect(saidTitle(draft)).toContain('for the feeds of Thu 12 Mar')
      return draft.roundId
    }
    // First eaten on the 12th. 36 h at 20 C, a tenth more for a slow lot: by 15:24; 25.5 h at 27 C: by 03:00 on the 11th.
    expect([start(20), start(27)]).toEqual(['midday', 'evening'])
  })

  test('never go into a vessel that is not harvested: another takes its turn, or it is said that one more is needed', () => {
    const { built, hatcher } = room('2026-03-06')
    hatcher.temperatureC = 27
    const sign = (on: string, at: string) => {
      const draft = onlyDraft(built.drafts(on, [artemiaStart]))
      for (const fact of signOff(artemiaStart, draft).facts) built.append(fact, { at })
      return draft
    }
    sign('2026-03-10', '2026-03-10T18:40:00.000Z')
    // Out at 22:43 on the 11th, of a slow lot: harvested in the morning, and nothing goes in before.
    const due = (on: string) => built.drafts(on, [artemiaHarvest]).drafts.map(({ roundId }) => roundId)
    expect([due('2026-03-11'), due('2026-03-12')]).toEqual([[], ['morning']])
    // An older jar that is emptied leaves the vessel as full as it was.
    built.fact('care', hatcher.id, '2026-03-11T07:10:00.000Z', { act: 'discard' })
    expect(['2026-03-11', '2026-03-12'].flatMap((on) => built.drafts(on, [artemiaStart]).drafts)).toEqual([])
    const harvest = onlyDraft(built.drafts('2026-03-12', [artemiaHarvest]))
    const [taken] = signOff(artemiaHarvest, harvest).facts
    built.append(taken!, { at: '2026-03-12T07:10:00.000Z' })
    const late = onlyDraft(built.drafts('2026-03-12', [artemiaStart]))
    expect([late.roundId, saidTitle(late)]).toEqual(['morning', expect.stringContaining('Fri 13 Mar')])
    const said = late.content.steps.map(({ text }) => text).join(' ')
    expect(said).toMatch(/after the first feed.*one more vessel can/)
    built.culture({ ...hatcher, id: built.nextId(), name: 'H2' })
    built.snapshot.facts = built.snapshot.facts.filter((fact) => fact.at < '2026-03-12')
    const second = sign('2026-03-11', '2026-03-11T18:40:00.000Z')
    expect([second.subjectName, second.dueAt]).toEqual(['H2', '2026-03-11T18:30:00.000Z'])
  })

  test('one vessel at 22 C is begun again as soon as it is harvested, even late in the evening', () => {
    const { built, hatcher } = room('2026-03-01')
    hatcher.temperatureC = 22
    built.fact('care', hatcher.id, '2026-03-10T07:10:00.000Z', { act: 'start_artemia', forDate: '2026-03-11' })
    // 33 h and a tenth: out at 19:28 on the 11th, when somebody comes back for them; the next are out by the 13th.
    expect(built.drafts(date, [artemiaStart]).drafts).toEqual([])
    const harvest = onlyDraft(built.drafts('2026-03-11', [artemiaHarvest]))
    expect([harvest.roundId, harvest.dueAt]).toEqual(['evening', '2026-03-11T19:28:00.000Z'])
    expect(built.drafts('2026-03-11', [artemiaStart]).drafts).toEqual([])
    built.append(signOff(artemiaHarvest, harvest).facts[0]!, { at: '2026-03-11T19:35:00.000Z' })
    const next = onlyDraft(built.drafts('2026-03-11', [artemiaStart]))
    expect([next.roundId, saidTitle(next)]).toEqual(['evening', expect.stringContaining('Fri 13 Mar')])
  })

  test('are weighed as they are: dry, or drained and heavier; by the tin’s own test where there is one', () => {
    const { built, hatcher } = room('2026-02-25')
    const amount = () => onlyDraft(built.drafts(date, [artemiaStart])).content.amount?.value
    // 1 a mL x 20,000 mL x 2 feeds, a tenth lost, a fifth to spare, at 200,000 a gram: 0.27, or 0.64 drained.
    expect(amount()).toBe(0.3)
    built.setting('artemia-start', { parameters: { cysts: 'drained_without_shells' } })
    expect(amount()).toBe(0.7)
    built.setting('artemia-start', { parameters: {} })
    const test = onlyDraft(built.drafts(date, [artemiaLotTest]))
    const nauplii = { animals: [12, 13, 11], volumeMl: 0.25, dilution: 20 }
    const unhatched = { animals: [12, 12, 12], volumeMl: 0.25, dilution: 20 }
    expect(artemiaLotTest.check?.({ nauplii, unhatched: { ...unhatched, dilution: 1 } })).toHaveLength(1)
    const none = { animals: [0, 0, 0], volumeMl: 0.25 }
    expect(artemiaLotTest.check?.({ nauplii: none })?.[0]?.path).toBe('values.nauplii')
    // 12 in 0.25 mL, 20 times diluted: 960 a mL, of 80 mL, from 1.6 g.
    const [tested] = signOff(artemiaLotTest, test, { nauplii, unhatched }).facts
    expect(tested).toEqual({
      kind: 'care',
      subjectId: hatcher.id,
      data: { act: 'test_cysts', naupliiPerGram: 48_000, note: '50 % hatched.' },
    })
    built.append(tested!, { at: '2026-03-09T13:00:00.000Z' })
    // 53,333 at 48,000 a gram.
    expect(amount()).toBe(1.2)
    expect(built.drafts(date, [artemiaLotTest]).drafts).toEqual([])
  })

  test('are weighed by what the last three harvests gave, once their jars were counted and filled to a mark', () => {
    const { built, hatcher } = room('2026-02-25')
    const hatched = (day: string, before: string, more: { keptMl?: number }, perMl: number) => {
      built.fact('care', hatcher.id, `${before}T07:30:00.000Z`, { act: 'start_artemia', cystsG: 0.5, litres: 2 })
      const parts = [{ to: 'chilled_reserve' as const, volumeL: 2 }]
      built.fact('harvest', hatcher.id, `${day}T10:00:00.000Z`, { volumeL: 2, parts, ...more })
      const animals = [perMl / 10, perMl / 10, perMl / 10]
      built.fact('count', hatcher.id, `${day}T10:05:00.000Z`, { of: 'culture', animals, volumeMl: 0.1 })
    }
    const amount = () => onlyDraft(built.drafts(date, [artemiaStart])).content.amount?.value
    hatched('2026-03-03', '2026-03-02', { keptMl: 300 }, 100)
    hatched('2026-03-05', '2026-03-04', { keptMl: 300 }, 140)
    // Nobody said how much of it there was: it says nothing.
    hatched('2026-03-07', '2026-03-06', {}, 20)
    expect(amount()).toBe(0.3)
    hatched('2026-03-09', '2026-03-08', { keptMl: 400 }, 90)
    // 36,000 of half a gram, which were 40,000 before the sieve: 80,000 a gram, the middle of 66,667, 80,000 and 93,333;
    // 53,333 are 0.67 g.
    expect(amount()).toBe(0.7)
  })

  test('are wetted before young that eat them first are likely out, and while they are late; not for those left with their parents', () => {
    // Seahorses of 28 C carry 17.33 days: Lin et al. 2008; those laid on 20 February come about the 9th.
    const started = (intent: ClutchIntent, on: string, spawnedAt = '2026-02-20T10:00:00.000Z') => {
      const { built } = room('2025-11-01')
      built.snapshot.batches = []
      const home = built.tank({ name: 'Seahorses', kind: 'broodstock', temperatureC: 28 })
      const pair = built.pair({ species: 'hippocampus-erectus', tankId: home.id })
      built.clutch(pair, { name: 'S1', care: 'pouch', spawnedAt, intent })
      built.tank({ name: 'Nursery', volumeL: 40 })
      return built.drafts(on, [artemiaStart]).drafts
    }
    expect(started('raise_all', '2026-02-28')).toEqual([])
    const [draft] = started('raise_all', '2026-03-08')
    // One per mL of the 40 L that are free, in two feeds, a tenth lost in the sieve and a fifth to spare.
    expect(draft?.content.amount?.value).toBeCloseTo(((1 * 40_000 * 2) / 0.9 / 200_000) * 1.2 + 0.03, 1)
    expect(draft?.content.because[0]).toMatchObject({ label: 'S1 on 2026-03-09, if they are out by then' })
    expect(started('raise_all', '2026-03-11')).toHaveLength(1)
    expect(started('leave_with_parents', '2026-03-08')).toEqual([])
    expect(started('undecided', '2026-03-08')).toEqual([])
  })

  test('is not asked when nobody eats Artemia, or twice a day', () => {
    expect(room('2026-03-09').built.drafts(date, [artemiaStart]).drafts).toEqual([])
    const { built, hatcher } = room('2026-03-03')
    built.fact('care', hatcher.id, '2026-03-10T07:05:00.000Z', { act: 'start_artemia' })
    expect(built.drafts(date, [artemiaStart]).drafts).toEqual([])
  })
})

describe('harvest, cold and enrichment', () => {
  const started = () => {
    const made = room('2026-03-03')
    made.built.fact('care', made.hatcher.id, '2026-03-09T09:00:00.000Z', { act: 'start_artemia' })
    return made
  }

  test('is due in the first round after they are out, once', () => {
    const { built, hatcher } = started()
    // 24 h at 28 C and a tenth for a slow lot: out by 11:24, harvested at 12:30.
    const draft = onlyDraft(built.drafts(date, [artemiaHarvest]))
    expect(draft.roundId).toBe('midday')
    const [harvest] = signOff(artemiaHarvest, draft).facts
    expect(harvest).toEqual({
      kind: 'harvest',
      subjectId: hatcher.id,
      data: { volumeL: 2, parts: [{ to: 'chilled_reserve', volumeL: 2 }] },
    })
    expect(built.drafts('2026-03-09', [artemiaHarvest]).drafts).toEqual([])
    built.append(harvest!, { at: '2026-03-10T12:40:00.000Z' })
    expect(built.drafts(date, [artemiaHarvest]).drafts).toEqual([])
  })

  test('none out yet leaves them where they are, and asks again with the next round or two hours later, until they are', () => {
    const { built } = started()
    const asked = () => built.drafts(date, [artemiaHarvest]).drafts
    const look = (at: string, note?: string) => {
      const { facts } = signOff(artemiaHarvest, asked()[0]!, { out: 'none', ...(note ? { note } : {}) })
      expect(facts).toHaveLength(1)
      built.append(facts[0]!, { at })
    }
    const first = asked()[0]!
    // Before anything is thrown away.
    const place = (word: string) => first.content.steps.findIndex(({ text }) => text.includes(word))
    expect([place('None out yet'), place('down the drain')]).toEqual([0, 1])
    look('2026-03-10T12:40:00.000Z', 'Heater was off.')
    expect(built.snapshot.facts.at(-1)?.data).toMatchObject({ note: 'None out yet. Heater was off.' })
    expect(asked()).toMatchObject([{ roundId: 'evening', dueAt: '2026-03-10T18:30:00.000Z' }])
    look('2026-03-10T18:40:00.000Z')
    const [late] = asked()
    expect(late).toMatchObject({ roundId: 'evening', dueAt: '2026-03-10T20:40:00.000Z' })
    expect(new Set([first.key, late?.key]).size).toBe(2)
    look('2026-03-10T20:45:00.000Z')
    expect(asked()).toEqual([])
    expect(built.drafts('2026-03-11', [artemiaHarvest]).drafts).toMatchObject([{ roundId: 'morning' }])
    const counted = (animals: number[]) => ({ out: 'none', count: { animals, volumeMl: 0.1 } })
    expect(artemiaHarvest.check?.(counted([0, 3, 0]))).toMatchObject([{ path: 'values.out' }])
    expect(artemiaHarvest.check?.(counted([0, 0, 0]))).toEqual([])
    expect(signOff(artemiaHarvest, late!, { out: 'yes' }).facts).toMatchObject([{ kind: 'harvest' }])
  })

  test('what is in the cold for a day is discarded, once', () => {
    const { built, hatcher } = started()
    const parts = [{ to: 'chilled_reserve', volumeL: 2 } as const]
    built.fact('harvest', hatcher.id, '2026-03-10T12:40:00.000Z', { volumeL: 2, parts })
    expect(built.drafts(date, [artemiaDiscard]).drafts).toEqual([])
    const draft = onlyDraft(built.drafts('2026-03-11', [artemiaDiscard]))
    expect(draft.roundId).toBe('evening')
    built.append(signOff(artemiaDiscard, draft).facts[0]!, { at: '2026-03-11T18:40:00.000Z' })
    expect(built.drafts('2026-03-12', [artemiaDiscard]).drafts).toEqual([])
  })

  test('enrichment is off until it is asked for, eight hours after the harvest: 0.3 g a litre', () => {
    const { built, hatcher } = started()
    const parts = [{ to: 'chilled_reserve', volumeL: 2 } as const]
    built.fact('harvest', hatcher.id, '2026-03-10T07:10:00.000Z', { volumeL: 2, parts })
    expect(built.drafts(date, [artemiaEnrich]).drafts).toEqual([])
    built.setting('artemia-enrich', { isOn: true })
    const draft = onlyDraft(built.drafts(date, [artemiaEnrich]))
    expect(draft.roundId).toBe('evening')
    expect(draft.content.amount).toEqual({ value: 0.6, unit: 'g' })
    expect(signOff(artemiaEnrich, draft).facts[0]).toMatchObject({ data: { act: 'enrich_artemia' } })
  })

  test('decapsulation is off, never a stand-in’s, with every caution, and in the published proportions', () => {
    const { built } = started()
    expect(built.drafts(date, [artemiaDecapsulate]).drafts).toEqual([])
    built.setting('artemia-decapsulate', { isOn: true, parameters: { cystsG: 500 } })
    const draft = onlyDraft(built.drafts(date, [artemiaDecapsulate]))
    expect(draft.isForStandIn).toBe(false)
    expect(draft.content.cautions.join(' ')).toMatch(/acid or ammonia.*never water onto caustic soda/)
    // Over 40 °C they die: FAO Fish. Tech. Pap. 361, sect. 4.2.3, from memory; in the room's own degrees.
    const warmest = draft.content.steps.flatMap(({ quantities }) => quantities.warmest ?? [])
    expect(warmest).toEqual([{ value: 40, unit: 'degC' }])
    const told = (of: typeof draft) => {
      const soda = of.content.steps.findIndex(({ quantities }) => quantities.soda)
      const bleach = of.content.steps.findIndex(({ text }) => text.startsWith('Add {bleach}'))
      const { quantities } = of.content.steps[soda]!
      return [
        of.content.steps[bleach]!.quantities.bleach?.value,
        quantities.soda?.value,
        quantities.water?.value,
        bleach - soda,
      ]
    }
    // As household and pool bleach are sold, in the US; the cup that is poured has to be one of these.
    const strengths = draft.content.steps.flatMap(({ quantities }) => quantities.strength?.value ?? [])
    expect(strengths).toEqual([0.0525, 0.06, 0.0825, 0.125])
    // 500 g: 4.77 L of 5.25 % bleach, 75 g of NaOH, 2.2 L of water; the soda is in and cold before cysts and bleach.
    expect(told(draft)).toEqual([4800, 75, 2200, 2])
    const [done] = signOff(artemiaDecapsulate, draft, { strength: 0.125 }).facts
    expect(done).toMatchObject({ data: { act: 'decapsulate', cystsG: 500, strength: 0.125 } })
    built.append(done!, { at: `${date}T19:00:00.000Z` })
    expect(built.drafts(date, [artemiaDecapsulate]).drafts).toEqual([])
    // At 12.5 % there is 2.0 L of it, and water for the rest of the 6.97 L.
    expect(told(onlyDraft(built.drafts('2026-03-17', [artemiaDecapsulate])))).toEqual([2000, 75, 5000, 2])
  })
})
