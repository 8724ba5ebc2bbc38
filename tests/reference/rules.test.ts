import {
  draftDay,
  findRule,
  type RoomSnapshot,
  rules,
  type SnapshotCulture,
  type SnapshotTank,
  type TaskDraft,
} from '@fryward/husbandry'
import { densityFromCounts, INOCULUM_RANGE_PER_ML } from '@fryward/live-feed'
import { type Fact, factDataSchemas } from '@fryward/shared'
import { describe, expect, test } from 'vitest'
import { saidTitle } from '../../packages/husbandry/src/testing/said-title.ts'

// A US gallon is 3.785411784 L, exactly: 231 cubic inches.
const gallonL = 3.785411784
const date = '2026-03-10'
const ids = { room: id(1), bottle: id(2), culture: id(3), tank: id(4), batch: id(5) }

function id(number: number): string {
  return `00000000-0000-7000-8000-${String(number).padStart(12, '0')}`
}

/** A room of one culture of 65e9 cells per mL concentrate, and what was written down of it. */
function roomOf(given: { culture?: Partial<SnapshotCulture>; tanks?: SnapshotTank[]; facts?: Fact[] }): RoomSnapshot {
  return {
    room: {
      id: ids.room,
      name: 'Room',
      timeZone: 'UTC',
      units: 'us',
      lightsOnAt: '07:00',
      lightsOffAt: '19:00',
      rounds: [
        { id: 'morning', name: 'Morning', at: '07:00' },
        { id: 'evening', name: 'Evening', at: '18:30' },
      ],
      salinity: 35,
      temperatureC: 26,
    },
    tanks: given.tanks ?? [],
    cultures: [
      {
        id: ids.culture,
        name: 'R1',
        kind: 'rotifer',
        strain: 'L',
        volumeL: 4.2 * gallonL,
        temperatureC: 25,
        salinity: 25,
        hasFilter: true,
        isBackup: false,
        concentrateId: ids.bottle,
        parentCultureId: null,
        airLine: null,
        shelf: null,
        tools: null,
        startedAt: '2026-03-01T06:00:00.000Z',
        ...given.culture,
      },
    ],
    concentrates: [{ id: ids.bottle, name: 'the bottle', cellsPerMl: 65e9, openedOn: null, useBy: null }],
    pairs: [],
    clutches: [],
    batches: [],
    groups: [],
    feedLinks: [],
    foodPlan: null,
    facts: given.facts ?? [],
    ruleSettings: {},
  }
}

type Told = { kind: Fact['kind']; at: string; data: unknown }
function facts(told: readonly Told[]): Fact[] {
  return told.map(({ kind, at, data }, index) => {
    const fact = {
      id: id(100 + index),
      kind,
      subjectId: ids.culture,
      subjectKind: 'culture' as const,
      at,
      receivedAt: at,
      recordedByName: 'Ana',
      taskId: null,
      struckAt: null,
      struckByName: null,
      struckReason: null,
      revision: index + 1,
      data: factDataSchemas[kind].parse(data),
    }
    return fact as Fact
  })
}
const counted = (density: number, at = `${date}T06:30:00.000Z`): Told => ({
  kind: 'count',
  at,
  data: { of: 'culture', animals: [density, density, density], volumeMl: 1 },
})

function drafts(ruleId: string, snapshot: RoomSnapshot, on = date): TaskDraft[] {
  const rule = findRule(ruleId)
  if (!rule) throw new Error(`No rule ${ruleId}`)
  return draftDay({ snapshot, date: on, rules: [rule] }).drafts
}
const dailyMl = (snapshot: RoomSnapshot) =>
  drafts('rotifer-feed', snapshot).reduce((sum, { content }) => sum + (content.amount?.value ?? 0), 0)

describe('facts of the trade (common practice), as arithmetic that the rules must agree with', () => {
  test('a working volume of 4.2 US gallons is 15.9 L, and a million rotifers start it at 63 per mL', () => {
    expect(4.2 * gallonL).toBeCloseTo(15.9, 1)
    const started: Told = { kind: 'inoculation', at: `${date}T06:00:00.000Z`, data: { animals: 1e6 } }
    const culture = { startedAt: `${date}T06:00:00.000Z` }
    const [feed] = drafts('rotifer-feed', roomOf({ culture, facts: facts([started]) }))
    const density = feed?.content.because[0]?.quantity?.value ?? 0
    expect(Math.round(density)).toBe(63)
    // H01: 50-150 per mL for an inoculum, ICAR e-course on rotifers.
    expect(density).toBeGreaterThanOrEqual(INOCULUM_RANGE_PER_ML.lower)
    expect(density).toBeLessThanOrEqual(INOCULUM_RANGE_PER_ML.upper)
  })

  test('3-4 mL twice a day is what the rule gives that vessel at 330-440 per mL', () => {
    const feedAt = (density: number) =>
      drafts('rotifer-feed', roomOf({ facts: facts([counted(density)]) })).map(({ content }) => content.amount)
    expect(feedAt(330)).toEqual([
      { value: 3, unit: 'mL' },
      { value: 3, unit: 'mL' },
    ])
    expect(feedAt(440)).toEqual([
      { value: 4, unit: 'mL' },
      { value: 4, unit: 'mL' },
    ])
  })

  test('a fifth of that vessel is a little under a gallon, once it is established', () => {
    const morning = Date.parse(`${date}T06:30:00.000Z`)
    const at = (ms: number) => new Date(ms).toISOString()
    const told: Told[] = []
    for (let ago = 20; ago >= 0; ago -= 1) {
      const ms = morning - ago * 86_400_000
      told.push(counted(260 + ((ago * 37) % 30), at(ms)))
      const parts = [{ to: 'drain', volumeL: 3.18 }]
      if (ago > 0) told.push({ kind: 'harvest', at: at(ms + 1_800_000), data: { volumeL: 3.18, parts } })
    }
    const culture = { startedAt: at(morning - 21 * 86_400_000) }
    const [harvest] = drafts('rotifer-harvest', roomOf({ culture, facts: facts(told) }))
    const gallons = (harvest?.content.amount?.value ?? 0) / gallonL
    expect(gallons).toBeGreaterThan(0.75)
    expect(gallons).toBeLessThan(0.9)
  })

  test('the first harvest comes after about three days', () => {
    const told: Told[] = [
      { kind: 'inoculation', at: '2026-03-07T06:30:00.000Z', data: { densityPerMl: 63 } },
      counted(100, '2026-03-08T06:30:00.000Z'),
      counted(150, '2026-03-09T06:30:00.000Z'),
    ]
    const culture = { startedAt: '2026-03-07T06:30:00.000Z' }
    const harvestOn = (on: string, more: Told[]) =>
      drafts('rotifer-harvest', roomOf({ culture, facts: facts([...told, ...more]) }), on)
    expect(harvestOn('2026-03-09', [])).toEqual([])
    expect(harvestOn(date, [counted(220)])).toHaveLength(1)
  })

  test('feeding and brushing are daily, a filter is cleaned weekly', () => {
    const snapshot = roomOf({ facts: facts([counted(300, '2026-03-01T06:30:00.000Z')]) })
    const days = Array.from({ length: 14 }, (_, day) => `2026-03-${String(day + 2).padStart(2, '0')}`)
    for (const on of days) {
      const [feed] = drafts('rotifer-feed', snapshot, on)
      expect(saidTitle(feed), on).toContain('walls brushed')
      expect(drafts('rotifer-brush', snapshot, on), on).toEqual([])
    }
    expect(findRule('rotifer-filter')?.parameters.everyDays).toMatchObject({ default: 7 })
  })
})

describe('published rations', () => {
  // Pfeiffer & Ludwig 2007, N. Am. J. Aquac. 69:239-243: 75,000 cells a rotifer a day of a concentrate of 65e9 per mL.
  test.each([
    [500, 26.0],
    [1000, 51.9],
    [1500, 77.9],
  ])('45 L at %i per mL is fed %f mL a day, to what a syringe or jug shows', (density, mlPerDay) => {
    const snapshot = roomOf({ culture: { volumeL: 45 }, facts: facts([counted(density)]) })
    // Half a millilitre is a syringe's mark at these doses: two feeds can be off by one mark together.
    expect(Math.abs(dailyMl(snapshot) - mlPerDay)).toBeLessThanOrEqual(0.5)
  })

  test('a count of 260 in three samples of 1 mL feeds 18 L with 2.7 mL, twice', () => {
    expect(densityFromCounts({ animals: [250, 270, 260], volumeMl: 1 }).densityPerMl).toBe(260)
    expect(dailyMl(roomOf({ culture: { volumeL: 18 }, facts: facts([counted(260)]) }))).toBeCloseTo(5.4, 9)
  })
})

describe('copepods', () => {
  const copepodsOf = (told: readonly Told[]) =>
    roomOf({
      culture: { kind: 'copepod', strain: null, volumeL: 10, startedAt: '2026-02-01T06:00:00.000Z' },
      facts: facts(told),
    })
  const grown = (perMl: number): Told => ({
    kind: 'count',
    at: `${date}T06:30:00.000Z`,
    data: { of: 'culture', animals: [perMl * 100], volumeMl: 100 },
  })

  // VanderLugt 2005, J. Young Investig., Bestiolina similis: survival was best at 5.0e4 Rhodomonas per mL.
  test('the first feed of 10 L holds 50,000 cells per mL, within what a syringe shows', () => {
    const [feed] = drafts('copepod-feed', copepodsOf([]))
    if (!feed) throw new Error('a first feed')
    // Of a bottle of 65e9 per mL, given 1 in 100.
    const cellsPerMl = ((feed.content.amount?.value ?? 0) / 100) * 65e9 * 1e-4
    expect(Math.abs(cellsPerMl / 5.0e4 - 1)).toBeLessThan(0.05)
    const cells = findRule('copepod-feed')?.parameters.cellsPerMl
    if (cells?.type !== 'number') throw new Error('a number of cells')
    // Cruz-Rosado et al. 2020 (Apocyclops, 20,000 a day) and Wang et al. 2021 (Bestiolina, up to 500,000) can be set.
    expect(cells.minimum).toBeLessThanOrEqual(20_000)
    expect(cells.maximum).toBeGreaterThanOrEqual(500_000)
  })

  // Production tanks hold about 2 grown per mL (Oceanic Institute, WAS 156505); at 8 under one egg a day (Kline & Laidley 2015).
  test('a culture as thick as production tanks is harvested, one of 0.25 per mL is not yet', () => {
    expect(drafts('copepod-harvest', copepodsOf([grown(2)]))).toHaveLength(1)
    expect(drafts('copepod-harvest', copepodsOf([grown(0.25)]))).toEqual([])
  })
})

describe('every rule', () => {
  test('cites a source of a known kind for every default, and never calls a memory published', () => {
    for (const rule of rules)
      for (const [name, { source }] of Object.entries(rule.parameters)) {
        expect(['published', 'common_practice', 'from_memory', 'assumption'], `${rule.id} ${name}`).toContain(
          source.kind,
        )
        expect(source.citation.trim(), `${rule.id} ${name}`).not.toBe('')
        if (source.kind === 'published') expect(source.citation, `${rule.id} ${name}`).not.toContain('from memory')
      }
  })
})
