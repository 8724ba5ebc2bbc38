import { describe, expect, test } from 'vitest'
import type { SnapshotCulture } from '../../snapshot/room-snapshot.ts'
import { saidSteps } from '../../testing/said-steps.ts'
import { saidTitle } from '../../testing/said-title.ts'
import { onlyDraft, SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { whyLines } from '../../testing/why-lines.ts'
import { artemiaDecapsulate } from './artemia-decapsulate.ts'
import { artemiaDiscard } from './artemia-discard.ts'
import { artemiaEnrich } from './artemia-enrich.ts'
import { artemiaHarvest } from './artemia-harvest.ts'
import { artemiaLotTest } from './artemia-lot-test.ts'
import { artemiaStart } from './artemia-start.ts'

const date = '2026-03-10'

/** Ocellaris in 20 L that take their first Artemia on day 5, beside rotifers and one hatcher of 2 L at 28 °C. */
function room(hatchedOn = '2026-03-03', vessel: Partial<SnapshotCulture> = {}) {
  const built = new SnapshotBuilder()
  built.culture({ startedAt: '2026-02-01T08:00:00.000Z' })
  const about = { name: 'H1', kind: 'artemia_hatch', strain: null, volumeL: 2, temperatureC: 28, salinity: 30 } as const
  const hatcher = built.culture({ ...about, startedAt: '2026-02-01T08:00:00.000Z', ...vessel })
  const batch = built.batch({ hatchedOn, tankId: built.tank({ volumeL: 20 }).id })
  const care = (at: string, data: { act: 'start_artemia' | 'discard' | 'enrich_artemia'; forDate?: string }) =>
    built.fact('care', hatcher.id, at, data)
  const harvested = (at: string, more: { keptMl?: number } = {}) =>
    built.fact('harvest', hatcher.id, at, { volumeL: 2, parts: [{ to: 'chilled_reserve', volumeL: 2 }], ...more })
  return { built, hatcher, batch, care, harvested }
}

describe('cysts that are wetted', () => {
  const starts = (built: SnapshotBuilder, on = date) => built.drafts(on, [artemiaStart]).drafts

  test('fill the whole vessel, at its salinity and warmth, and are out as long after as that warmth takes', () => {
    const steps = ({ built }: ReturnType<typeof room>) => saidSteps(starts(built)[0])
    expect(steps(room()).slice(0, 3)).toEqual([
      '2 L of clean water at 30 psu and 28 degC; strong air from the bottom; light on it.',
      'Weigh 0.3 g dry, rinse them on a sieve, and put them in.',
      'They hatch in about 24 hours.',
    ])
    // 1.5 h for each degree under 28: 24 + 1.5 x 3.3 = 28.95, to a tenth.
    expect(steps(room('2026-03-03', { temperatureC: 24.7 }))[2]).toBe('They hatch in about 29 hours.')
    expect(steps(room('2026-03-03', { temperatureC: 25.12 }))[2]).toBe('They hatch in about 28.3 hours.')
  })

  test('are said and handled as they are: in their shells, without, or drained', () => {
    const said = (cysts?: string) => {
      const { built } = room()
      if (cysts) built.setting('artemia-start', { parameters: { cysts } })
      const [draft] = starts(built)
      const wet = whyLines(draft).filter((line) => line.includes('drained'))
      return [saidTitle(draft), draft?.content.amountOf, saidSteps(draft)[1]?.split(' ')[0], wet]
    }
    const feeds = 'for the feeds of Wed 11 Mar'
    expect(said()).toEqual([`0.3 g dry cysts in their shells, ${feeds}`, 'dry cysts in their shells', 'Weigh', []])
    expect(said('dry_without_shells')).toEqual([
      ...[`0.3 g dry shell-free cysts, ${feeds}`, 'dry shell-free cysts', 'Weigh', []],
    ])
    // 0.222 g x 2.4.
    expect(said('drained_without_shells')).toEqual([
      ...[`0.6 g shell-free cysts, drained, ${feeds}`, 'shell-free cysts, drained', 'Rinse'],
      ['times 2.4 times heavier when drained than dry'],
    ])
    expect(said('a kind of another age')[1]).toBe('dry cysts in their shells')
  })

  test('say why from who eats them to the hours of the hatch', () => {
    const { built } = room()
    expect(whyLines(starts(built)[0])).toEqual([
      // Day 8 less a day: 0.833 a mL of 20 L, in two feeds, and a tenth lost in the sieve: 37,037.
      ...['37000 animals Batch 1 on 2026-03-11', 'equals 37000 animals wanted'],
      ...['and 0.2 share more than the feeds ask for', 'divided by 200000 animals from a gram of dry cysts'],
      ...['equals 0.3 g cysts, to what a scale shows', 'and 28 degC where it hatches', 'and 24 hours to hatch'],
      ...['and 0 hours of enriching', 'and 1 hours set aside to settle, sieve and rinse'],
    ])
  })

  test('that were forgotten last night are late, which is no fault of a vessel that stood empty', () => {
    const { built, care, harvested } = room()
    // At 28 C a slow lot is out at 09:24; the first feed is at 07:00, and an hour of it is sieving.
    const late = 'They are out about 1 hours after the first feed of that day: what the jar still holds comes first.'
    expect(saidSteps(starts(built)[0]).slice(3)).toEqual([late])
    // The same where the vessel was full until this morning: then a second one is wanted.
    care('2026-03-09T08:00:00.000Z', { act: 'start_artemia', forDate: '2026-03-10' })
    harvested('2026-03-10T07:05:00.000Z')
    const said = saidSteps(starts(built)[0]).slice(3)
    expect(said).toEqual([late, expect.stringMatching(/one more vessel can/)])
    // Begun the evening before the last, for the feeds of the 12th, they are in time and neither is said.
    const [inTime] = starts(room('2026-03-06').built)
    expect([inTime?.roundId, saidSteps(inTime).length]).toEqual(['evening', 3])
  })

  test('late by more than an hour say by how many', () => {
    const { built, care, harvested } = room('2026-03-03', { temperatureC: 27 })
    care('2026-03-09T04:00:00.000Z', { act: 'start_artemia', forDate: '2026-03-10' })
    harvested('2026-03-10T07:05:00.000Z')
    // 25.5 h and a tenth from 07:00: 11:03, less the hour of the round, 3.05 h after the first feed at 07:00.
    expect(saidSteps(starts(built)[0])[3]).toContain('out about 3 hours after')
  })

  test('are warned about in water too cool or too warm, in too small a vessel, and of an odd enrichment', () => {
    const notes = (vessel: Partial<SnapshotCulture>, parameters: Record<string, number> = {}, larvalL = 20) => {
      const { built, batch } = room('2026-02-26', vessel)
      built.snapshot.tanks.find(({ id }) => id === batch.tankId)!.volumeL = larvalL
      built.setting('artemia-start', { parameters })
      const days = ['2026-03-08', '2026-03-09', '2026-03-10'].flatMap((on) => starts(built, on))
      return saidSteps(days[0])
        .slice(3)
        .filter((step) => !step.includes('first feed') && !step.includes('one more'))
    }
    expect(notes({ temperatureC: 20 })).toEqual([])
    expect(notes({ temperatureC: 19 })).toEqual([
      'It is cooler than the published range: look from the planned hour on.',
    ])
    expect(notes({ temperatureC: 30 })).toEqual([])
    // Metabolism stops for good above 33 C: Lavens, Thongrod & Sorgeloos 2000, ch. 6 (Blackwell).
    expect(notes({ temperatureC: 31 })).toEqual(['It is warmer than is best; above 33 degC they stop for good.'])
    expect(notes({}, { enrichHours: 12 })).toEqual([])
    expect(notes({}, { enrichHours: 10 })).toEqual(['Published enrichments last 12 or 24 hours.'])
    expect(notes({}, { enrichHours: 24 })).toEqual(['Enriched for a day they are too large for larvae of five days.'])
    // 5 g a litre at the most (the same chapter): 0.05 L hold 0.25 g, and 0.27 are wanted.
    expect(notes({ volumeL: 0.05 })).toEqual(['That is more than one vessel holds: share it between several.'])
  })

  test('are asked about at a third and at three times of what was planned; as many as the jar takes may be weighed', () => {
    const { built } = room()
    const [field] = starts(built)[0]!.content.fields
    expect(field).toMatchObject({ name: 'cystsG', unit: 'g', usual: 0.3, maximum: 500, step: 0.1, isRequired: false })
    expect(
      field?.type === 'number' && [field.likelyMinimum, field.likelyMaximum].map((each) => each.toFixed(1)),
    ).toEqual(['0.1', '0.9'])
  })

  test('belong each to the vessel that they go into: the slower one is begun for the day after', () => {
    const { built, hatcher } = room()
    built.culture({ ...hatcher, id: built.nextId(), name: 'H2', temperatureC: 22 })
    expect(starts(built).map((draft) => [draft.subjectName, saidTitle(draft).slice(-10)])).toEqual([
      ['H1', 'Wed 11 Mar'],
      ['H2', 'Thu 12 Mar'],
    ])
  })
})

describe('a hatch that is harvested', () => {
  test('is late after an hour and a half; asks whether they are out before all else, and fills the jar as it was filled', () => {
    const { built, care, harvested } = room()
    harvested('2026-03-05T10:00:00.000Z', { keptMl: 300 })
    harvested('2026-03-07T10:00:00.000Z', { keptMl: 450 })
    harvested('2026-03-08T10:00:00.000Z')
    care('2026-03-09T09:00:00.000Z', { act: 'start_artemia' })
    const draft = onlyDraft(built.drafts(date, [artemiaHarvest]))
    expect(draft).toMatchObject({ dueAt: `${date}T12:30:00.000Z`, lateAt: `${date}T14:00:00.000Z` })
    expect(saidTitle(draft)).toBe('Harvest the nauplii')
    expect(draft.content.fields.map(({ name }) => name)).toEqual(['out', 'count', 'keptMl', 'note'])
    expect(draft.content.fields[0]).toMatchObject({ choices: [{ value: 'yes' }, { value: 'none' }], isRequired: false })
    // The last time that somebody said how full it was.
    expect(draft.content.fields[2]).toMatchObject({ usual: 450 })
    expect(whyLines(draft)).toEqual([
      'cysts started',
      'and 28 degC in it',
      'and 24 hours to hatch',
      'and 24 hours in the cold at most',
    ])
    // 24 + 1.5 x 2.88 = 28.32, to a tenth.
    const cool = room('2026-03-03', { temperatureC: 25.12 })
    cool.care('2026-03-09T06:00:00.000Z', { act: 'start_artemia' })
    expect(whyLines(onlyDraft(cool.built.drafts(date, [artemiaHarvest])))[2]).toBe('and 28.3 hours to hatch')
  })

  test('that was looked at in vain is another task each time', () => {
    const { built, care } = room()
    care('2026-03-09T09:00:00.000Z', { act: 'start_artemia' })
    const ordinals = () => built.drafts(date, [artemiaHarvest]).drafts.map(({ ordinal }) => ordinal)
    expect(ordinals()).toEqual([1])
    built.append(signOff(artemiaHarvest, built.drafts(date, [artemiaHarvest]).drafts[0]!, { out: 'none' }).facts[0]!, {
      at: `${date}T12:40:00.000Z`,
    })
    expect(ordinals()).toEqual([2])
  })

  test('is kept under 10 °C for a day and counted in drops of 0.1 mL, a hundred times thinner where they are many', () => {
    const { built, care } = room()
    care('2026-03-09T09:00:00.000Z', { act: 'start_artemia' })
    const steps = saidSteps(onlyDraft(built.drafts(date, [artemiaHarvest])))
    // Up to 8 million a litre, under 10 C, up to 24 h: Ghent Univ. shrimp nutrition course, Artemia cold storage.
    expect(steps.join(' ')).toMatch(/screen under 150 um.*under 10 degC with gentle air, at most 24 hours.*8 million/)
    expect(steps.join(' ')).toMatch(/three drops of 0\.1 mL.*A mL of it into 99 mL of water, and write 100/)
  })

  test('keeps what was counted, how full the jar is and how it hatched, each where it was said', () => {
    const { built, care, hatcher } = room()
    care('2026-03-09T09:00:00.000Z', { act: 'start_artemia' })
    const draft = onlyDraft(built.drafts(date, [artemiaHarvest]))
    const kept = (values: Record<string, unknown>) => signOff(artemiaHarvest, draft, values).facts
    const parts = [{ to: 'chilled_reserve', volumeL: 2 }]
    const count = { animals: [20, 22, 21], volumeMl: 0.1 }
    expect(kept({ out: 'yes', count, keptMl: 300, note: 'Well.' })).toEqual([
      { kind: 'harvest', subjectId: hatcher.id, data: { volumeL: 2, parts, keptMl: 300 } },
      { kind: 'count', subjectId: hatcher.id, data: { of: 'culture', dilution: 1, ...count } },
      { kind: 'observation', subjectId: hatcher.id, data: { note: 'Well.' } },
    ])
    expect(kept({})).toEqual([{ kind: 'harvest', subjectId: hatcher.id, data: { volumeL: 2, parts } }])
    // None out: a number beside it would be of another jar, and the vessel is left as it is.
    expect(kept({ out: 'none', keptMl: 300 })).toEqual([
      { kind: 'observation', subjectId: hatcher.id, data: { note: 'None out yet.' } },
    ])
    expect(artemiaHarvest.check?.({ out: 'none', count: { ...count, animals: [0, 1, 0] } })).toEqual([
      { path: 'values.out', message: 'Nauplii were counted: say that they are out, or clear the count.' },
    ])
    expect(artemiaHarvest.check?.({ out: 'none' })).toEqual([])
    expect(artemiaHarvest.check?.({ out: 'yes', count })).toEqual([])
    expect(artemiaHarvest.check?.({ count })).toEqual([])
  })
})

describe('nauplii in the cold', () => {
  const discards = (built: SnapshotBuilder, on: string) => built.drafts(on, [artemiaDiscard]).drafts

  test('go down the drain in the round in which they are a day old, to the minute', () => {
    const { built, harvested } = room()
    harvested('2026-03-10T07:00:00.000Z')
    const [draft] = discards(built, '2026-03-11')
    expect([draft?.roundId, saidTitle(draft)]).toEqual(['morning', 'Discard what is left of the nauplii'])
    expect(whyLines(draft)).toEqual(['harvested', 'and 24 hours in the cold at most'])
    expect(draft?.content.cautions[0]).toBe('Never release stock or culture water into the wild.')
    expect(discards(built, '2026-03-10')).toEqual([])
  })

  test('of a new harvest are asked about though the old were thrown away; and not where the next harvest empties the jar', () => {
    const { built, care, harvested } = room()
    expect(discards(built, '2026-03-11')).toEqual([])
    care('2026-03-09T20:00:00.000Z', { act: 'discard' })
    harvested('2026-03-10T07:00:00.000Z')
    expect(discards(built, '2026-03-11')).toHaveLength(1)
    // Out at 11:24 on the 11th.
    care('2026-03-10T09:00:00.000Z', { act: 'start_artemia' })
    expect(discards(built, '2026-03-11')).toEqual([])
  })
})

describe('enriching nauplii', () => {
  function enrichedRoom(vessel: Partial<SnapshotCulture> = {}) {
    const made = room('2026-03-03', vessel)
    made.built.setting('artemia-enrich', { isOn: true })
    return { ...made, asked: (on = date) => made.built.drafts(on, [artemiaEnrich]).drafts }
  }

  test('begins with the round eight hours after the harvest, when they first eat, and not a day after it', () => {
    const at = (harvest: string, on = date) => {
      const { asked, harvested } = enrichedRoom()
      harvested(harvest)
      return asked(on).map(({ roundId }) => roundId)
    }
    // The moult to instar II: Lavens & Sorgeloos 1996, FAO Fish. Tech. Pap. 361, sect. 4.1.
    expect(at('2026-03-10T04:30:00.000Z')).toEqual(['midday'])
    expect(at('2026-03-10T04:31:00.000Z')).toEqual(['evening'])
    expect(at('2026-03-10T10:31:00.000Z')).toEqual([])
    expect(at('2026-03-09T12:00:00.000Z')).toEqual(['morning'])
    expect([at('2026-03-09T00:00:00.000Z'), at('2026-03-08T23:59:00.000Z')]).toEqual([['morning'], []])
    expect(enrichedRoom().asked()).toEqual([])
  })

  test('is once a harvest, 0.3 g to each litre of the vessel, a tenth of a gram at the least', () => {
    const { asked, harvested, care } = enrichedRoom({ volumeL: 3 })
    care('2026-03-09T20:00:00.000Z', { act: 'enrich_artemia' })
    harvested('2026-03-10T04:00:00.000Z')
    const [draft] = asked()
    expect(saidTitle(draft)).toBe('0.9 g emulsion to the nauplii')
    expect(saidSteps(draft)).toEqual([
      'Only those that will not be fed within 8 hours: newly hatched nauplii do not eat.',
      '3 L of clean water, strong air; blend 0.9 g with a little water and pour it in.',
      expect.stringMatching(/^Rinse well/),
    ])
    expect(whyLines(draft)).toEqual([
      ...['harvested', 'and 8 hours after the harvest', 'and 0.3 g emulsion for each litre', 'times 3 L in it'],
    ])
    care('2026-03-10T12:40:00.000Z', { act: 'enrich_artemia' })
    expect(asked()).toEqual([])
    const small = enrichedRoom({ volumeL: 0.2 })
    small.harvested('2026-03-10T04:00:00.000Z')
    expect(small.asked()[0]?.content.amount).toEqual({ value: 0.1, unit: 'g' })
  })
})

describe('decapsulating', () => {
  function bathRoom() {
    const made = room()
    made.built.setting('artemia-decapsulate', { isOn: true })
    return { ...made, asked: (on = date) => made.built.drafts(on, [artemiaDecapsulate]).drafts }
  }

  test('is for a room that hatches cysts, whatever else it grows', () => {
    expect(bathRoom().asked()).toHaveLength(1)
    const without = bathRoom()
    without.built.snapshot.cultures = without.built.snapshot.cultures.filter(({ kind }) => kind !== 'artemia_hatch')
    expect(without.asked()).toEqual([])
  })

  test('tells 10 g by the published recipe, and what the other bottles that are sold would take', () => {
    const [draft] = bathRoom().asked()
    expect([draft?.roundId, saidTitle(draft)]).toEqual(['evening', 'Decapsulate 10 g of cysts'])
    const steps = saidSteps(draft)
    // 500 g: 4.77 L of 5.25 %, 75 g of soda, 2.2 L of water (Larviculture & Artemia Newsletter no. 43, 1997); a fiftieth
    // of it: 95.4 mL, 1.5 g and 44 mL, of 139.4 mL in all. A jug shows tens of mL from 60 on.
    expect(steps.slice(0, 4)).toEqual([
      'Read the strength on the bleach bottle: the amounts below are for 0.0525 share.',
      // 95.4 x 5.25 / 6 = 83.5 of 139.4; / 8.25 = 60.7; / 12.5 = 40.1.
      'With bleach of 0.06 share: 80 mL of it, and 56 mL of water.',
      'With bleach of 0.0825 share: 60 mL of it, and 80 mL of water.',
      'With bleach of 0.125 share: 40 mL of it, and 100 mL of water.',
    ])
    expect(steps[5]).toMatch(/dissolve 1\.5 g of caustic soda in 44 mL of water/)
    expect(steps[7]).toBe('Add 100 mL of the bleach, and stir without a stop, under 40 degC: more ice when it warms.')
    expect(whyLines(draft)).toEqual([
      // 95.4 mL x 5.25 %.
      ...['10 g cysts', 'and 0.0525 share strong, by its label', 'and 5 g active chlorine'],
      'and 7 days from one time to the next',
    ])
  })

  test('is asked weekly by the half day, and starts from the bleach of the last time', () => {
    const { built, asked } = bathRoom()
    const done = (at: string, strength?: number) =>
      built.fact('care', built.snapshot.room.id, at, {
        act: 'decapsulate',
        cystsG: 10,
        ...(strength ? { strength } : {}),
      })
    const late = done('2026-03-03T19:01:00.000Z')
    expect([asked().length, asked('2026-03-11').length]).toEqual([0, 1])
    built.snapshot.facts = built.snapshot.facts.filter(({ id }) => id !== late.id)
    done('2026-03-03T19:00:00.000Z')
    expect(whyLines(asked()[0])[1]).toBe('and 0.0525 share strong, by its label')
    done('2026-03-03T19:00:00.000Z', 0.0825)
    const [draft] = asked()
    expect(whyLines(draft)[1]).toBe('and 0.0825 share of the bleach last time')
    expect(draft?.content.fields).toMatchObject([{ name: 'strength', usual: 0.0825, isRequired: true, unit: 'share' }])
    expect(saidSteps(draft)[0]).toContain('0.0825 share')
  })

  test('lists the strengths that are sold but the one at hand, by the tenth of a per cent', () => {
    const others = (strength: number) => {
      const { built, asked } = bathRoom()
      const data = { act: 'decapsulate', cystsG: 10, strength } as const
      built.fact('care', built.snapshot.room.id, '2026-03-01T19:00:00.000Z', data)
      return saidSteps(asked()[0]).flatMap((step) => /^With bleach of ([\d.]+)/.exec(step)?.[1] ?? [])
    }
    expect(others(0.06)).toEqual(['0.0525', '0.0825', '0.125'])
    expect(others(0.0605)).toEqual(['0.0525', '0.0825', '0.125'])
    expect(others(0.0611)).toEqual(['0.0525', '0.06', '0.0825', '0.125'])
  })

  test('keeps its grams and the strength of the bottle; a task without grams, the strength alone', () => {
    const { asked, built } = bathRoom()
    const [draft] = asked()
    const kept = (of: typeof draft, values: Record<string, unknown>) => signOff(artemiaDecapsulate, of!, values).facts
    const care = (data: object) => [{ kind: 'care', subjectId: built.snapshot.room.id, data }]
    expect(kept(draft, { strength: 0.06 })).toEqual(care({ act: 'decapsulate', cystsG: 10, strength: 0.06 }))
    const bare = { ...draft!, content: { ...draft!.content, amount: null } }
    expect(kept(bare, { strength: 0.06 })).toEqual(care({ act: 'decapsulate', strength: 0.06 }))
  })
})

test('rotifers that were harvested are neither enriched nor thrown away as nauplii', () => {
  const { built } = room()
  built.setting('artemia-enrich', { isOn: true })
  const rotifers = built.snapshot.cultures.find(({ kind }) => kind === 'rotifer')!
  const parts = [{ to: 'drain' as const, volumeL: 2 }]
  built.fact('harvest', rotifers.id, '2026-03-10T04:00:00.000Z', { volumeL: 2, parts })
  built.fact('care', rotifers.id, '2026-03-09T04:00:00.000Z', { act: 'start_artemia' })
  const all = [artemiaDiscard, artemiaEnrich, artemiaHarvest]
  expect(['2026-03-10', '2026-03-11'].flatMap((on) => built.drafts(on, all).drafts)).toEqual([])
})

describe('testing the tin', () => {
  const tests = (built: SnapshotBuilder, on = date) => built.drafts(on, [artemiaLotTest]).drafts

  test('is the standard test, counted one in twenty, and nothing for a stand-in', () => {
    const { built } = room()
    const draft = onlyDraft({ drafts: tests(built), gaps: [] })
    expect(draft).toMatchObject({ roundId: 'midday', isForStandIn: false })
    expect(saidTitle(draft)).toBe('Test how well the tin hatches')
    const steps = saidSteps(draft)
    // FAO Fish. Tech. Pap. 361, sect. 4.2 worksheet (Lavens & Sorgeloos 1996); from memory.
    expect(steps[0]).toBe(
      'Started the day before: 1.6 g of cysts into 80 mL of water of 33 psu at 28 degC, light and strong air.',
    )
    expect(steps[2]).toBe('After a day stir well, take 1 mL of it into 19 mL of water, and write 20 as the dilution.')
    expect(steps[3]).toContain('Count three samples of 0.25 mL of that under the lens.')
    expect(draft.content.fields).toMatchObject([
      { name: 'nauplii', isRequired: true, volumeMl: 0.25, replicates: 3 },
      { name: 'unhatched', isRequired: false, volumeMl: 0.25, replicates: 3 },
    ])
    expect(whyLines(draft)).toEqual(['not yet tested', 'and 90 days from one test to the next'])
  })

  test('is one for all vessels, at the first of them, while anybody eats Artemia, every ninety days', () => {
    const { built, hatcher } = room()
    const second = built.culture({ ...hatcher, id: built.nextId(), name: 'H0' })
    expect(tests(built).map(({ subjectName }) => subjectName)).toEqual(['H0'])
    expect(tests(room('2026-03-08').built)).toEqual([])
    const tested = (id: string, at: string) =>
      built.fact('care', id, at, { act: 'test_cysts', naupliiPerGram: 200_000 })
    // 10 December is ninety days before 10 March.
    tested(second.id, '2025-12-10T12:40:00.000Z')
    tested(hatcher.id, '2025-12-01T12:40:00.000Z')
    expect([tests(built, '2026-03-09').length, tests(built).length]).toEqual([0, 1])
    expect(tests(built)[0]?.content.because[0]).toMatchObject({
      ...{ label: 'last tested', origin: { at: '2025-12-10T12:40:00.000Z' } },
    })
  })

  test('wants three samples, both counted in the same, and something in them', () => {
    const check = (nauplii?: object, unhatched?: object) =>
      (artemiaLotTest.check?.({ ...(nauplii ? { nauplii } : {}), ...(unhatched ? { unhatched } : {}) }) ?? []).map(
        ({ path, message }) => `${path}: ${message}`,
      )
    const count = (animals: number[], more: object = {}) => ({ animals, volumeMl: 0.25, dilution: 20, ...more })
    expect(check(count([12, 13, 11]), count([1, 0, 2]))).toEqual([])
    expect(check(count([12, 13, 11, 9]))).toEqual([])
    expect(check(count([12, 13]))).toEqual(['values.nauplii: Three samples or more are needed: here are 2.'])
    const same = [
      'values.unhatched: Count both in the same samples: as many of them, as many mL, and the same dilution.',
    ]
    expect(check(count([12, 13, 11]), count([1, 0]))).toEqual(same)
    expect(check(count([12, 13, 11]), count([1, 0, 2], { volumeMl: 0.5 }))).toEqual(same)
    expect(check(count([12, 13, 11]), count([1, 0, 2], { dilution: 10 }))).toEqual(same)
    const nothing = [expect.stringMatching(/^values\.nauplii: Nothing at all was seen/)]
    expect(check(count([0, 0, 0]))).toEqual(nothing)
    expect(check(count([0, 0, 0]), count([0, 0, 0]))).toEqual(nothing)
    expect([check(count([0, 0, 0]), count([0, 1, 0])), check(count([0, 1, 0])), check()]).toEqual([[], [], []])
  })

  test('keeps nauplii a gram to thousands, and what hatched where the others were counted too', () => {
    const { built, hatcher } = room()
    const draft = tests(built)[0]!
    const kept = (values: Record<string, unknown>) =>
      signOff(artemiaLotTest, draft, values).facts.map(({ data }) => data)
    const nauplii = { animals: [50, 54, 49], volumeMl: 0.25, dilution: 20 }
    // 51 in 0.25 mL, 20 times thinned: 4,080 a mL, of 80 mL, from 1.6 g: 204,000.
    expect(kept({ nauplii })).toEqual([{ act: 'test_cysts', naupliiPerGram: 204_000 }])
    const unhatched = { animals: [17, 16, 18], volumeMl: 0.25, dilution: 20 }
    // 153 of 204.
    expect(kept({ nauplii, unhatched })).toEqual([
      { act: 'test_cysts', naupliiPerGram: 204_000, note: '75 % hatched.' },
    ])
    // Not thinned they are a twentieth: 10,200; and in drops of 0.5 mL half as many.
    expect(kept({ nauplii: { ...nauplii, dilution: 1 } })).toEqual([{ act: 'test_cysts', naupliiPerGram: 10_000 }])
    expect(kept({ nauplii: { ...nauplii, volumeMl: 0.5 } })).toEqual([{ act: 'test_cysts', naupliiPerGram: 102_000 }])
    expect(kept({})).toEqual([])
    expect(hatcher.id).toBe(draft.subjectId)
  })
})
