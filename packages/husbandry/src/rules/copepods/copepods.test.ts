import { describe, expect, test } from 'vitest'
import { husbandryDay } from '../../calendar/husbandry-day.ts'
import { waterNeeds } from '../../plans/water-needs.ts'
import type { SnapshotCulture } from '../../snapshot/room-snapshot.ts'
import { densityAt } from '../../state/culture-state.ts'
import { saidTitle } from '../../testing/said-title.ts'
import { onlyDraft, SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { copepodCount } from './copepod-count.ts'
import { copepodFeed } from './copepod-feed.ts'
import { copepodHarvest } from './copepod-harvest.ts'
import { copepodRestart } from './copepod-restart.ts'
import { copepodSiphon } from './copepod-siphon.ts'
import { copepodTrouble } from './copepod-trouble.ts'

const date = '2026-03-10'
const all = [copepodTrouble, copepodCount, copepodHarvest, copepodFeed, copepodSiphon, copepodRestart]
const copepods = (room: SnapshotBuilder, given: Partial<SnapshotCulture> = {}) =>
  room.culture({
    name: 'C1',
    kind: 'copepod',
    strain: null,
    volumeL: 10,
    startedAt: '2026-02-01T08:00:00.000Z',
    ...given,
  })
const grown = (room: SnapshotBuilder, culture: SnapshotCulture, at: string, perMl: number) =>
  room.fact('count', culture.id, at, { of: 'culture', animals: [perMl * 10], volumeMl: 10 })
const nauplii = (room: SnapshotBuilder, culture: SnapshotCulture, at: string, perMl: number) =>
  room.fact('count', culture.id, at, { of: 'copepod_nauplii', animals: [perMl * 10], volumeMl: 10 })

test('no copepod rule asks anything of another kind of culture', () => {
  const room = new SnapshotBuilder()
  room.concentrate()
  for (const kind of ['rotifer', 'microalgae', 'artemia_hatch'] as const)
    room.culture({ startedAt: '2025-12-01T08:00:00.000Z', kind })
  expect(room.drafts(date, all)).toEqual({ drafts: [], gaps: [] })
})

describe('counting copepods', () => {
  test('is asked at the start and every third day, grown ones apart from nauplii', () => {
    const room = new SnapshotBuilder()
    const culture = copepods(room)
    const draft = onlyDraft(room.drafts(date, [copepodCount]))
    expect(draft.content.fields.map(({ name, isRequired }) => [name, isRequired])).toEqual([
      ['count', true],
      ['nauplii', false],
      ['signs', false],
    ])
    // Asked about beyond what a thin start and a crowded vessel hold; of a counted one beyond a quarter and four times that.
    const limits = (index: number, of = draft) => {
      const field = of.content.fields[index]
      return field?.type === 'count' ? [field.likelyMinimum, field.likelyMaximum, field.maximum] : []
    }
    expect([limits(0), limits(1)]).toEqual([
      [0.05, 20, 1000],
      [0, 50, 1000],
    ])
    const counted = new SnapshotBuilder()
    grown(counted, copepods(counted), '2026-03-07T07:10:00.000Z', 2)
    expect(limits(0, onlyDraft(counted.drafts(date, [copepodCount])))).toEqual([0.5, 8, 1000])
    const count = { animals: [20, 22, 18], volumeMl: 10 }
    const young = { animals: [80, 70, 90], volumeMl: 10 }
    expect(signOff(copepodCount, draft, { count, nauplii: young, signs: ['foam'] }).facts).toEqual([
      { kind: 'count', subjectId: culture.id, data: { of: 'culture', dilution: 1, ...count } },
      { kind: 'count', subjectId: culture.id, data: { of: 'copepod_nauplii', dilution: 1, ...young } },
      { kind: 'observation', subjectId: culture.id, data: { signs: ['foam'] } },
    ])
    grown(room, culture, '2026-03-10T07:10:00.000Z', 2)
    expect(room.drafts('2026-03-12', [copepodCount]).drafts).toEqual([])
    expect(room.drafts('2026-03-13', [copepodCount]).drafts).toHaveLength(1)
  })

  test('is asked daily while small larvae wait for a culture that was too thin', () => {
    const asked = (perMl: number) => {
      const room = new SnapshotBuilder()
      const culture = copepods(room)
      grown(room, culture, '2026-03-09T07:10:00.000Z', perMl)
      room.feedLink(room.batch({ hatchedOn: '2026-03-07' }), culture)
      return room.drafts(date, [copepodCount]).drafts.length
    }
    expect([0.9, 1].map(asked)).toEqual([1, 0])
  })
})

describe('feeding copepods', () => {
  const bottled = () => {
    const room = new SnapshotBuilder()
    room.concentrate({ cellsPerMl: 1e9 })
    return { room, culture: copepods(room) }
  }
  const fed = (room: SnapshotBuilder, culture: SnapshotCulture) =>
    room.fact('feeding', culture.id, '2026-03-09T07:10:00.000Z', { food: 'concentrate', amountMl: 0.3 })

  test('gives all the cells at first: 50,000 x 10,000 mL / 1e9 = 0.5 mL, once a day', () => {
    const { room, culture } = bottled()
    const draft = onlyDraft(room.drafts(date, [copepodFeed]))
    expect(draft.roundId).toBe('morning')
    expect(draft.content.amount).toEqual({ value: 0.5, unit: 'mL' })
    expect(signOff(copepodFeed, draft, { water: 'water_tinted' }).facts).toEqual([
      {
        kind: 'feeding',
        subjectId: culture.id,
        data: { food: 'concentrate', concentrateId: room.snapshot.concentrates[0]?.id, amountMl: 0.5 },
      },
      { kind: 'observation', subjectId: culture.id, data: { signs: ['water_tinted'] } },
    ])
  })

  test('then half of them, a quarter after green water, and all of them after clear water', () => {
    const amountAfter = (water: 'water_green' | 'water_clear' | 'water_tinted' | null) => {
      const { room, culture } = bottled()
      fed(room, culture)
      if (water) room.fact('observation', culture.id, '2026-03-09T07:10:00.000Z', { signs: [water] })
      return onlyDraft(room.drafts(date, [copepodFeed])).content.because.at(-1)?.quantity?.value
    }
    // Half is 0.25 mL, to what a syringe shows.
    expect(amountAfter(null)).toBe(0.3)
    expect(amountAfter('water_tinted')).toBe(0.3)
    expect(amountAfter('water_green')).toBe(0.1)
    expect(amountAfter('water_clear')).toBe(0.5)
  })

  test('by the looks of three days and no longer: 5 mL for 100 L are 2.5, half of them after green water', () => {
    const amountAfter = (at: string) => {
      const room = new SnapshotBuilder()
      room.concentrate({ cellsPerMl: 1e9 })
      const culture = copepods(room, { volumeL: 100 })
      room.fact('feeding', culture.id, '2026-03-05T07:10:00.000Z', { food: 'concentrate', amountMl: 2.5 })
      room.fact('observation', culture.id, at, { signs: ['water_green'] })
      return onlyDraft(room.drafts(date, [copepodFeed])).content.amount?.value
    }
    expect(amountAfter('2026-03-07T00:30:00.000Z')).toBe(1.3)
    expect(amountAfter('2026-03-06T23:30:00.000Z')).toBe(2.5)
  })

  test('live algae are given by a count of a week at most: they have grown or sunk since', () => {
    const asked = (countedAt: string) => {
      const room = new SnapshotBuilder()
      copepods(room)
      const algae = room.culture({ name: 'A1', kind: 'microalgae', startedAt: '2026-02-01T08:00:00.000Z' })
      room.fact('count', algae.id, countedAt, { of: 'culture', animals: [500], volumeMl: 0.0001 })
      return room.drafts(date, [copepodFeed])
    }
    expect(asked('2026-03-03T08:00:00.000Z').drafts).toHaveLength(1)
    expect(asked('2026-03-02T08:00:00.000Z').gaps).toHaveLength(1)
  })

  test('a strong concentrate is diluted: 50,000 x 10,000 / 65e9 = 0.0077 mL is 0.8 mL of 1 in 100', () => {
    const room = new SnapshotBuilder()
    room.concentrate()
    copepods(room)
    const draft = onlyDraft(room.drafts(date, [copepodFeed]))
    expect(saidTitle(draft)).toMatch(/^[\d.,]+ \S+ the bottle diluted 1 in 100$/)
    expect(draft.content.amount).toEqual({ value: 0.8, unit: 'mL' })
    const [fact] = signOff(copepodFeed, draft).facts
    expect(fact?.kind === 'feeding' && fact.data.amountMl).toBeCloseTo(0.008, 9)
  })

  test('live algae are given by their count and taken out of their own culture, a fifth of the vessel at most', () => {
    const live = (cellsPerMl: number, volumeL = 18) => {
      const room = new SnapshotBuilder()
      const culture = copepods(room)
      const algae = room.culture({ name: 'A1', kind: 'microalgae', volumeL, startedAt: '2026-02-01T08:00:00.000Z' })
      room.fact('count', algae.id, '2026-03-08T08:00:00.000Z', {
        of: 'culture',
        animals: [cellsPerMl / 1e4],
        volumeMl: 0.0001,
      })
      return { culture, algae, draft: onlyDraft(room.drafts(date, [copepodFeed])) }
    }
    const { culture, algae, draft } = live(5e6)
    expect(draft.content.amount).toEqual({ value: 100, unit: 'mL' })
    expect(signOff(copepodFeed, draft).facts).toEqual([
      {
        kind: 'feeding',
        subjectId: culture.id,
        data: { food: 'live_microalgae', fromCultureId: algae.id, amountMl: 100 },
      },
      {
        kind: 'harvest',
        subjectId: algae.id,
        data: { volumeL: 0.1, parts: [{ to: 'culture', subjectId: culture.id, volumeL: 0.1 }] },
      },
    ])
    expect(live(1e4).draft.content.amount).toEqual({ value: 2000, unit: 'mL' })
    // Nor more than half of what the alga itself is kept in, over the day's feeds.
    const jar = live(1e4, 1).draft.content
    expect(jar.amount).toEqual({ value: 500, unit: 'mL' })
    expect(jar.steps.at(-1)?.text).toContain('A1 cannot give it all')
    expect(jar.fields.at(-1)).toMatchObject({ name: 'amountMl', maximum: 1000 })
    expect(draft.content.steps.at(-1)?.text).not.toContain('cannot give')
  })

  test('live algae that nobody counted are given by their colour, out of what is left of them', () => {
    const seen = (colour: 'water_green' | 'water_tinted' | 'water_clear', drawnL = 0) => {
      const room = new SnapshotBuilder()
      copepods(room)
      const algae = room.culture({ name: 'A1', kind: 'microalgae', volumeL: 1, startedAt: '2026-02-01T08:00:00.000Z' })
      room.fact('observation', algae.id, '2026-03-09T07:00:00.000Z', { signs: [colour] })
      if (drawnL > 0)
        room.fact('harvest', algae.id, '2026-03-09T07:10:00.000Z', {
          volumeL: drawnL,
          parts: [{ to: 'drain', volumeL: drawnL }],
        })
      return room.drafts(date, [copepodFeed])
    }
    // 50,000 x 10,000 mL / 3 million, and a million where it is pale.
    expect(onlyDraft(seen('water_green')).content.amount).toEqual({ value: 170, unit: 'mL' })
    expect(onlyDraft(seen('water_tinted')).content.amount).toEqual({ value: 500, unit: 'mL' })
    expect(onlyDraft(seen('water_green', 0.8)).content.amount).toEqual({ value: 100, unit: 'mL' })
    expect(seen('water_clear').drafts).toEqual([])
  })

  test('divides by the feeds that there are, and says so where the room has fewer rounds', () => {
    const { room } = bottled()
    room.setting('copepod-feed', { parameters: { feedsPerDay: 8 } })
    const { drafts } = room.drafts(date, [copepodFeed])
    expect(drafts).toHaveLength(3)
    expect(drafts[0]?.content.because.at(-2)).toMatchObject({
      label: 'that the rounds allow',
      quantity: { value: 3, unit: 'feeds' },
      joins: 'divided_by',
    })
    expect(drafts[0]?.content.amount).toEqual({ value: 0.2, unit: 'mL' })
  })

  test('says what is missing when nothing is known of its food', () => {
    const room = new SnapshotBuilder()
    copepods(room)
    expect(room.drafts(date, [copepodFeed]).gaps[0]?.message).toMatch(
      /strength from the label, or look at a microalgae culture/,
    )
  })
})

describe('harvesting nauplii', () => {
  const counted = (given: Partial<SnapshotCulture> = {}) => {
    const room = new SnapshotBuilder()
    const culture = copepods(room, given)
    grown(room, culture, '2026-03-09T07:10:00.000Z', 2)
    nauplii(room, culture, '2026-03-09T07:10:00.000Z', 6)
    return { room, culture }
  }

  test('takes a quarter of the water, and fills it up; what nobody eats goes to other fish', () => {
    const { room, culture } = counted()
    room.pair({ name: 'Pair 1' })
    const draft = onlyDraft(room.drafts(date, [copepodHarvest]))
    expect(draft.content.amount).toEqual({ value: 2.5, unit: 'L' })
    // Grown ones, a fifth of a millimetre wide and more, stay above 100 µm; nauplii do above 40 and not above 100: from memory.
    const meshes = draft.content.steps.flatMap(({ quantities }) =>
      Object.values(quantities).flatMap(({ value, unit }) => (unit === 'um' ? [value] : [])),
    )
    expect(meshes).toEqual([100, 40])
    expect(saidTitle(draft)).toMatch(/^Nauplii out of [\d.,]+ \S+: other fish; new water in$/)
    expect(draft.content.because[2]?.quantity).toEqual({ value: 15_000, unit: 'animals' })
    expect(signOff(copepodHarvest, draft).facts).toEqual([
      { kind: 'harvest', subjectId: culture.id, data: { volumeL: 2.5, parts: [{ to: 'other_fish', volumeL: 2.5 }] } },
      { kind: 'water_change', subjectId: culture.id, data: { removedL: 0, addedL: 2.5 } },
    ])
  })

  test('is shared out by the water of the larvae that it feeds, and fed to them as nauplii', () => {
    const { room, culture } = counted()
    const batches = [3, 2].map((volumeL) =>
      room.batch({ hatchedOn: '2026-03-07', tankId: room.tank({ kind: 'larval', volumeL }).id }),
    )
    for (const batch of batches) room.feedLink(batch, culture)
    const draft = onlyDraft(room.drafts(date, [copepodHarvest]))
    const { facts } = signOff(copepodHarvest, draft)
    expect(facts.filter(({ kind }) => kind === 'feeding')).toEqual(
      [
        { volumeL: 1.5, animals: 9000 },
        { volumeL: 1, animals: 6000 },
      ].map(({ volumeL, animals }, index) => ({
        kind: 'feeding',
        subjectId: batches[index]?.id,
        data: { food: 'copepods', fromCultureId: culture.id, amountMl: volumeL * 1000, animals },
      })),
    )
  })

  test('is more where the larvae’s water wants more, and half of the culture at most', () => {
    const litresFor = (tankL: number) => {
      const { room, culture } = counted()
      room.feedLink(
        room.batch({ hatchedOn: '2026-03-07', tankId: room.tank({ kind: 'larval', volumeL: tankL }).id }),
        culture,
      )
      return onlyDraft(room.drafts(date, [copepodHarvest])).content.amount?.value
    }
    // 2 a mL of 10 L at 6 a mL are 3.3 L.
    expect([5, 10, 200].map(litresFor)).toEqual([2.5, 3.3, 5])
  })

  test('goes to larvae that are small, not to those on their yolk nor, beside small ones, to those on Artemia', () => {
    const { room, culture } = counted()
    const hatched = (hatchedOn: string) => {
      const tankId = room.tank({ kind: 'larval', volumeL: 5 }).id
      const batch = room.batch({ species: 'other-1f-synchiropus-splendidus', hatchedOn, tankId })
      room.feedLink(batch, culture)
      return batch
    }
    hatched('2026-03-09')
    const fedBy = () =>
      signOff(copepodHarvest, onlyDraft(room.drafts(date, [copepodHarvest]))).facts.flatMap((fact) =>
        fact.kind === 'feeding' ? [fact.subjectId] : [],
      )
    expect(fedBy()).toEqual([])
    const old = hatched('2026-02-15')
    expect(fedBy()).toEqual([old.id])
    const small = hatched('2026-03-08')
    expect(fedBy()).toEqual([small.id])
  })

  test('is daily while it feeds larvae, else every third day', () => {
    const harvested = (isLinked: boolean) => {
      const { room, culture } = counted()
      if (isLinked) room.feedLink(room.batch({ hatchedOn: '2026-03-07' }), culture)
      room.fact('harvest', culture.id, '2026-03-09T08:00:00.000Z', {
        volumeL: 2.5,
        parts: [{ to: 'drain', volumeL: 2.5 }],
      })
      return (on: string) => room.drafts(on, [copepodHarvest]).drafts.length
    }
    expect([harvested(true)('2026-03-09'), harvested(true)(date)]).toEqual([0, 1])
    expect([harvested(false)('2026-03-11'), harvested(false)('2026-03-12')]).toEqual([0, 1])
  })

  test('has its water mixed the evening before, and not twice when it is due today already', () => {
    const needs = (isLinked: boolean) => {
      const { room, culture } = counted()
      const tankId = room.tank({ kind: 'larval', volumeL: 5 }).id
      if (isLinked) room.feedLink(room.batch({ hatchedOn: '2026-03-07', tankId }), culture)
      room.setting('copepod-siphon', { isOn: false })
      room.setting('larval-water-change', { isOn: false })
      const snapshot = room.build()
      const on = (each: string) => husbandryDay({ room: snapshot.room, date: each })
      return (today: string, tomorrow: string) =>
        waterNeeds(snapshot, { today: on(today), tomorrow: on(tomorrow) }).map(({ purpose, litres }) => [
          purpose,
          litres,
        ])
    }
    const asked = [['new water for nauplii', 2.5]]
    expect(needs(true)('2026-03-09', date)).toEqual(asked)
    expect(needs(false)('2026-03-09', date)).toEqual([])
    // Not counted yet today: what is due tomorrow only.
    expect(needs(false)('2026-03-08', '2026-03-09')).toEqual(asked)
  })

  test('waits for age, a fresh count and a density, and leaves a backup or a falling culture alone', () => {
    const none = (room: SnapshotBuilder) => expect(room.drafts(date, [copepodHarvest]).drafts).toEqual([])
    none(counted({ startedAt: '2026-02-25T08:00:00.000Z' }).room)
    none(counted({ isBackup: true }).room)
    const thin = new SnapshotBuilder()
    grown(thin, copepods(thin), '2026-03-09T07:10:00.000Z', 0.9)
    none(thin)
    const old = new SnapshotBuilder()
    grown(old, copepods(old), '2026-03-02T07:10:00.000Z', 5)
    none(old)
    const falling = new SnapshotBuilder()
    const culture = copepods(falling)
    for (const [index, perMl] of [6, 4, 2].entries())
      grown(falling, culture, `2026-03-0${index * 3 + 2}T07:10:00.000Z`, perMl)
    none(falling)
    // Small larvae that live on it are not let starve for it: a quarter, however much they want.
    nauplii(falling, culture, '2026-03-08T07:10:00.000Z', 2)
    falling.feedLink(falling.batch({ hatchedOn: '2026-03-07' }), culture)
    expect(onlyDraft(falling.drafts(date, [copepodHarvest])).content.amount).toEqual({ value: 2.5, unit: 'L' })
  })

  test('one counted thin gives a quarter to small larvae that live on it, down to half of what a first harvest wants', () => {
    const given = (animals: number, volumeMl: number) => {
      const room = new SnapshotBuilder()
      const culture = copepods(room)
      const at = '2026-03-09T07:10:00.000Z'
      room.fact('count', culture.id, at, { of: 'culture', animals: [animals], volumeMl })
      nauplii(room, culture, at, 2)
      room.feedLink(room.batch({ hatchedOn: '2026-03-07' }), culture)
      return room.drafts(date, [copepodHarvest]).drafts[0]?.content.amount?.value
    }
    // 26 adults in 30 mL, where the water held 33: 0.87 per mL, under the 1 of a first harvest. A quarter of 10 L.
    expect(given(26, 30)).toBe(2.5)
    expect([given(50, 100), given(49, 100)]).toEqual([2.5, undefined])
    // As dense as that it gives half of it to larvae that want more: 20 L x 2 per mL of a few nauplii.
    expect(given(30, 30)).toBe(5)
  })

  test('leaves the grown ones in: a harvest neither thins what is counted as the culture nor explains a fall', () => {
    const { room, culture } = counted()
    for (const day of ['09', '10', '11'])
      room.fact('harvest', culture.id, `2026-03-${day}T08:00:00.000Z`, {
        volumeL: 5,
        parts: [{ to: 'drain', volumeL: 5 }],
      })
    const moment = { at: '2026-03-11T09:00:00.000Z', until: '2026-03-12T00:00:00.000Z' }
    expect(densityAt(room.build(), culture, moment)?.densityPerMl).toBe(2)
    grown(room, culture, '2026-03-11T09:00:00.000Z', 2)
    grown(room, culture, '2026-03-12T07:00:00.000Z', 2)
    expect(room.drafts('2026-03-12', [copepodTrouble]).drafts).toEqual([])
    // A quarter fewer each day, with half of the water through the sieve before.
    room.fact('harvest', culture.id, '2026-03-12T08:00:00.000Z', { volumeL: 5, parts: [{ to: 'drain', volumeL: 5 }] })
    grown(room, culture, '2026-03-13T07:00:00.000Z', 1.5)
    room.fact('harvest', culture.id, '2026-03-13T08:00:00.000Z', { volumeL: 5, parts: [{ to: 'drain', volumeL: 5 }] })
    grown(room, culture, '2026-03-14T07:00:00.000Z', 1.1)
    expect(saidTitle(onlyDraft(room.drafts('2026-03-14', [copepodTrouble])))).toBe('See to it: the counts fall')
  })
})

describe('water and restarts', () => {
  test('the bottom is siphoned weekly with a fifth of new water, which is mixed the day before', () => {
    const room = new SnapshotBuilder()
    const culture = copepods(room, { startedAt: '2026-03-03T08:00:00.000Z' })
    expect(room.drafts('2026-03-09', [copepodSiphon]).drafts).toEqual([])
    const draft = onlyDraft(room.drafts(date, [copepodSiphon]))
    expect(draft.content.amount).toEqual({ value: 2, unit: 'L' })
    expect(signOff(copepodSiphon, draft, { salinity: 25 }).facts).toEqual([
      { kind: 'care', subjectId: culture.id, data: { act: 'siphon_bottom' } },
      { kind: 'water_change', subjectId: culture.id, data: { removedL: 2, addedL: 2, salinity: 25 } },
    ])
    const snapshot = room.build()
    const on = (each: string) => husbandryDay({ room: snapshot.room, date: each })
    expect(waterNeeds(snapshot, { today: on('2026-03-09'), tomorrow: on(date) })).toMatchObject([
      { subjectId: culture.id, purpose: 'bottom siphoned', litres: 2 },
    ])
    expect(waterNeeds(snapshot, { today: on(date), tomorrow: on('2026-03-11') })).toEqual([])
  })

  test('is siphoned a week after the last time, or after it was begun again, whichever came later', () => {
    const room = new SnapshotBuilder()
    const culture = copepods(room)
    const isDue = (on: string) => room.drafts(on, [copepodSiphon]).drafts.length === 1
    expect(isDue(date)).toBe(true)
    room.fact('care', culture.id, '2026-03-04T08:00:00.000Z', { act: 'siphon_bottom' })
    expect([isDue(date), isDue('2026-03-11')]).toEqual([false, true])
    room.fact('care', culture.id, '2026-03-06T08:00:00.000Z', { act: 'restart_culture' })
    expect([isDue('2026-03-12'), isDue('2026-03-13')]).toEqual([false, true])
    room.fact('care', culture.id, '2026-03-08T08:00:00.000Z', { act: 'siphon_bottom' })
    expect([isDue('2026-03-14'), isDue('2026-03-15')]).toEqual([false, true])
  })

  test('is moved into a clean vessel after six weeks with half of its animals, a week apart from the next', () => {
    const room = new SnapshotBuilder()
    const culture = copepods(room, { startedAt: '2026-01-27T08:00:00.000Z' })
    grown(room, culture, '2026-03-08T07:10:00.000Z', 4)
    const draft = onlyDraft(room.drafts(date, [copepodRestart]))
    expect(draft.content.title).toMatchObject({ deed: 'restart_part', amount: { value: 0.5, unit: 'share' } })
    room.setting('copepod-restart', { parameters: { keptShare: 1 } })
    expect(onlyDraft(room.drafts(date, [copepodRestart])).content.title).toMatchObject({
      deed: 'restart_all',
      amount: null,
    })
    const { facts } = signOff(copepodRestart, draft)
    expect(facts).toEqual([
      { kind: 'care', subjectId: culture.id, data: { act: 'restart_culture', litres: 10 } },
      { kind: 'inoculation', subjectId: culture.id, data: { densityPerMl: 2 } },
    ])
    for (const fact of facts) room.append(fact, { at: '2026-03-10T13:00:00.000Z' })
    expect(room.drafts('2026-03-11', [copepodRestart]).drafts).toEqual([])
    expect(room.drafts(date, [copepodCount]).drafts).toEqual([])
    // Counted anew the day after, and another of the same age waits for a week.
    expect(room.drafts('2026-03-11', [copepodCount]).drafts).toHaveLength(1)
    copepods(room, { name: 'C2', startedAt: '2026-01-20T08:00:00.000Z' })
    expect(room.drafts('2026-03-16', [copepodRestart]).drafts).toEqual([])
    expect(room.drafts('2026-03-17', [copepodRestart]).drafts).toHaveLength(1)
  })

  test('is put off for three weeks while small larvae live on it', () => {
    const due = (startedAt: string) => {
      const room = new SnapshotBuilder()
      room.feedLink(room.batch({ hatchedOn: '2026-03-07' }), copepods(room, { startedAt }))
      return room.drafts(date, [copepodRestart]).drafts.length
    }
    expect([due('2026-01-27T08:00:00.000Z'), due('2026-01-07T08:00:00.000Z'), due('2026-01-06T08:00:00.000Z')]).toEqual(
      [0, 0, 1],
    )
  })

  test('two that come due together are moved one after the other, the older first', () => {
    const room = new SnapshotBuilder()
    copepods(room, { name: 'C1', startedAt: '2026-01-27T08:00:00.000Z' })
    copepods(room, { name: 'C2', startedAt: '2026-01-20T08:00:00.000Z' })
    expect(onlyDraft(room.drafts(date, [copepodRestart])).subjectName).toBe('C2')
  })
})

describe('copepods in trouble', () => {
  test('any sign of the last day asks for a second look, until it is found well', () => {
    const room = new SnapshotBuilder()
    const culture = copepods(room)
    room.fact('observation', culture.id, '2026-03-09T18:00:00.000Z', { signs: ['bad_smell', 'water_green'] })
    const draft = onlyDraft(room.drafts(date, [copepodTrouble]))
    expect(saidTitle(draft)).toBe('See to it: it smells')
    const [fact] = signOff(copepodTrouble, draft, { did: 'thinned' }).facts
    expect(fact).toEqual({
      kind: 'observation',
      subjectId: culture.id,
      data: { signs: ['swimming_well'], note: 'changed part of the water' },
    })
    room.append(fact!, { at: '2026-03-10T07:10:00.000Z' })
    expect(room.drafts(date, [copepodTrouble]).drafts).toEqual([])
  })

  test('the look of the water alone is no trouble; counts that fall twice in a row are', () => {
    const room = new SnapshotBuilder()
    const culture = copepods(room)
    room.fact('observation', culture.id, '2026-03-09T18:00:00.000Z', { signs: ['water_clear'] })
    expect(room.drafts(date, [copepodTrouble]).drafts).toEqual([])
    for (const [index, perMl] of [6, 4, 2].entries())
      grown(room, culture, `2026-03-0${index * 3 + 2}T07:10:00.000Z`, perMl)
    expect(saidTitle(onlyDraft(room.drafts(date, [copepodTrouble])))).toBe('See to it: the counts fall')
  })
})
