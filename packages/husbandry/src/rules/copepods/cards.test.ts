import { describe, expect, test } from 'vitest'
import type { SnapshotCulture } from '../../snapshot/room-snapshot.ts'
import { cultureRoom } from '../../testing/forms/form-rooms.ts'
import { saidSteps } from '../../testing/said-steps.ts'
import { saidTitle } from '../../testing/said-title.ts'
import { onlyDraft, SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { whyLines } from '../../testing/why-lines.ts'
import { copepodCount } from './copepod-count.ts'
import { copepodFeed } from './copepod-feed.ts'
import { copepodHarvest } from './copepod-harvest.ts'
import { copepodRestart } from './copepod-restart.ts'
import { copepodSiphon } from './copepod-siphon.ts'
import { copepodTrouble } from './copepod-trouble.ts'

const date = '2026-03-10'
const since = '2026-02-01T08:00:00.000Z'

/** C1, 10 L of copepods at 25 and 25 C, fed from a bottle of 65e9 cells per mL. */
function copepods(given: Partial<SnapshotCulture> = {}) {
  const made = cultureRoom({ name: 'C1', kind: 'copepod', volumeL: 10, ...given })
  const counted = (at: string, perMl: number, of: 'culture' | 'copepod_nauplii' = 'culture') =>
    made.room.fact('count', made.culture.id, at, { of, animals: [perMl * 10], volumeMl: 10 })
  return { ...made, counted }
}

describe('a count of copepods', () => {
  test('is of three samples of 10 mL, and looks for what would outgrow them', () => {
    const { room, counted } = copepods()
    const draft = onlyDraft(room.drafts(date, [copepodCount]))
    expect([draft.roundId, saidTitle(draft)]).toEqual(['morning', 'Count copepods and nauplii'])
    expect(saidSteps(draft).slice(1)).toEqual([
      'Take 3 samples of 10 mL in a clear cup, a torch from the side, and count by eye or lens.',
      'Adults and copepodites first; then nauplii, round and jerking, apart.',
      'Females with eggs? Rotifers or ciliates among them? One rotifer is a rotifer culture in two weeks.',
    ])
    const often = ['and 3 days from one count to the next', 'and 10 mL in each sample']
    expect(whyLines(draft)).toEqual(['not yet counted since its start', ...often])
    counted('2026-03-07T07:10:00.000Z', 2)
    expect(whyLines(onlyDraft(room.drafts(date, [copepodCount])))).toEqual(['2 per_mL last counted', ...often])
  })

  test('in which none was found tells nothing of the next, and nobody counts what begins tomorrow', () => {
    const { room, counted } = copepods()
    counted('2026-03-07T07:10:00.000Z', 0)
    expect(onlyDraft(room.drafts(date, [copepodCount])).content.fields[0]).toMatchObject({
      ...{ usual: null, likelyMinimum: 0.05, likelyMaximum: 20 },
    })
    expect(copepods({ startedAt: '2026-03-11T00:00:00.000Z' }).room.drafts(date, [copepodCount]).drafts).toEqual([])
    expect(copepods({ startedAt: '2026-03-10T23:00:00.000Z' }).room.drafts(date, [copepodCount]).drafts).toHaveLength(1)
  })

  test('keeps either of the two, and nothing where nothing was typed', () => {
    const draft = onlyDraft(copepods().room.drafts(date, [copepodCount]))
    const kinds = (values: object) => signOff(copepodCount, draft, { ...values }).facts.map(({ data }) => data)
    const count = { animals: [3], volumeMl: 10 }
    expect(kinds({ nauplii: count })).toMatchObject([{ of: 'copepod_nauplii', animals: [3] }])
    expect(kinds({ count })).toMatchObject([{ of: 'culture', animals: [3] }])
    expect(kinds({})).toEqual([])
  })
})

describe('a feed of algae', () => {
  const fed = (...looks: ('water_green' | 'water_clear')[]) => {
    const { room, culture } = copepods()
    room.fact('feeding', culture.id, '2026-03-09T07:10:00.000Z', { food: 'concentrate', amountMl: 0.01 })
    for (const [index, sign] of looks.entries())
      room.fact('observation', culture.id, `2026-03-09T07:${index + 1}5:00.000Z`, { signs: [sign] })
    return onlyDraft(room.drafts(date, [copepodFeed]))
  }

  test('out of a strong bottle is thinned a hundred times, and multiplies out: 50,000 x 10,000 / 65e9', () => {
    const draft = onlyDraft(copepods().room.drafts(date, [copepodFeed]))
    expect(saidSteps(draft)).toEqual([
      'Look at the water first: tinted is right. Still green: give half of it. Clear: say so, tomorrow’s is more.',
      'Shake the bottle gently and put it back in the cold at once.',
      'Stir 1 mL of it into 99 mL of culture water: that is 1 in 100.',
      'Pour 0.8 mL in near the air, which only just turns the water over: they are battered by big bubbles.',
    ])
    expect(draft.content.amountOf).toBe('the bottle diluted 1 in 100')
    expect(whyLines(draft)).toEqual([
      ...['50000 cells_per_mL to keep', 'times 10 L in it', 'divided by 65000000000 cells_per_mL in the bottle'],
      ...['divided by 1 feeds a day', 'equals 0.8 mL a feed, to what a syringe or jug shows, diluted 1 in 100'],
    ])
  })

  test('is half of it once they are fed, a quarter after green water, and all of it after clear: the last look speaks', () => {
    const eaten = 'times 0.5 share gone in a day'
    expect(whyLines(fed()).slice(2, 4)).toEqual([eaten, 'divided by 65000000000 cells_per_mL in the bottle'])
    expect(whyLines(fed('water_green')).slice(2, 4)).toEqual([eaten, 'times 0.5 share water still green'])
    expect(whyLines(fed('water_green', 'water_clear')).slice(2, 4)).toEqual([
      'and water clear, nothing left all of it again',
      'divided by 65000000000 cells_per_mL in the bottle',
    ])
    expect([fed(), fed('water_green'), fed('water_clear')].map(({ content }) => content.amount?.value)).toEqual([
      ...[0.4, 0.2, 0.8],
    ])
  })

  /** C1 without a bottle, beside algae of so many litres and so thick or so coloured. */
  const live = (
    ...algae: {
      name: string
      volumeL: number
      cellsPerMl?: number
      look?: 'water_green' | 'water_tinted'
      at?: string
    }[]
  ) => {
    const room = new SnapshotBuilder()
    room.culture({ name: 'C1', kind: 'copepod', strain: null, volumeL: 10, startedAt: since })
    for (const { name, volumeL, cellsPerMl, look, at = '2026-03-09T08:00:00.000Z' } of algae) {
      const { id } = room.culture({ name, kind: 'microalgae', strain: null, volumeL, startedAt: since })
      if (cellsPerMl !== undefined)
        room.fact('count', id, at, { of: 'culture', animals: [cellsPerMl / 1e4], volumeMl: 0.0001 })
      if (look) room.fact('observation', id, at, { signs: ['foam', look] })
    }
    return room.drafts(date, [copepodFeed])
  }

  test('out of a culture of algae is swirled, and takes as much water out first', () => {
    const draft = onlyDraft(live({ name: 'A1', volumeL: 18, cellsPerMl: 5e6 }))
    expect(saidSteps(draft).slice(1)).toEqual([
      'Swirl A1; as much water out of the culture first, through the fine sieve.',
      'Pour 100 mL in near the air, which only just turns the water over: they are battered by big bubbles.',
    ])
    expect(whyLines(draft).slice(2)).toEqual([
      ...['divided by 5000000 cells_per_mL counted in A1', 'divided by 1 feeds a day'],
      'equals 100 mL a feed, to what a syringe or jug shows',
    ])
  })

  test('is of the thickest that was counted; by colour, of the one that holds most cells', () => {
    const from = (...given: Parameters<typeof live>) => onlyDraft(live(...given)).content.amountOf
    const [thin, thick] = [
      { name: 'A1', volumeL: 18, cellsPerMl: 1e6 },
      { name: 'A2', volumeL: 2, cellsPerMl: 5e6 },
    ]
    expect(from(thin, thick)).toBe('A2')
    // Counted goes before seen.
    expect(from({ name: 'A3', volumeL: 50, look: 'water_green' }, thin)).toBe('A1')
    // A litre that is deep holds 3e9, two and five that are pale 2e9 and 5e9.
    const [deep, pale, paler] = [
      { name: 'A1', volumeL: 1, look: 'water_green' as const },
      { name: 'A2', volumeL: 2, look: 'water_tinted' as const },
      { name: 'A3', volumeL: 5, look: 'water_tinted' as const },
    ]
    expect(from(deep, pale, paler)).toBe('A3')
    expect(from(pale, deep)).toBe('A1')
    expect(whyLines(onlyDraft(live(paler)))[2]).toBe('divided by 1000000 cells_per_mL A3 is pale: taken as')
    expect(whyLines(onlyDraft(live(deep)))[2]).toBe('divided by 3000000 cells_per_mL A1 is deep: taken as')
    expect(signOff(copepodFeed, onlyDraft(live(deep))).facts.map(({ kind }) => kind)).toEqual(['feeding', 'harvest'])
  })

  test('by colour goes by a look of today or yesterday, and by none in which nobody counted any', () => {
    const deep = (at: string) => live({ name: 'A1', volumeL: 5, look: 'water_green', at })
    expect(deep('2026-03-09T00:00:00.000Z').drafts).toHaveLength(1)
    expect(deep('2026-03-08T23:59:00.000Z').gaps).toHaveLength(1)
    expect(live({ name: 'A1', volumeL: 5, cellsPerMl: 0 }).gaps).toHaveLength(1)
  })

  test('is of no animals, however many were counted and however green their water was', () => {
    const room = new SnapshotBuilder()
    room.culture({ name: 'C1', kind: 'copepod', strain: null, volumeL: 10, startedAt: since })
    const rotifers = room.culture({ name: 'R1', startedAt: since })
    room.count(rotifers, '2026-03-09T08:00:00.000Z', [300])
    room.fact('observation', rotifers.id, '2026-03-09T08:00:00.000Z', { signs: ['water_green'] })
    expect(room.drafts(date, [copepodFeed])).toMatchObject({ drafts: [], gaps: [{}] })
  })

  test('of two that are alike is of the first by name, or the first that was begun', () => {
    const from = (names: string[], given: { cellsPerMl: number } | { look: 'water_tinted' }) => {
      const draft = onlyDraft(live(...names.map((name) => ({ name, volumeL: 5, ...given }))))
      return [draft.content.amountOf, (draft.context as { algaeId: string }).algaeId]
    }
    const [b, a] = [from(['B', 'A'], { look: 'water_tinted' }), from(['A', 'B'], { look: 'water_tinted' })]
    expect([b[0], a[0]]).toEqual(['A', 'A'])
    const [first, second] = ['00000000-0000-7000-8000-000000000003', '00000000-0000-7000-8000-000000000005']
    expect(from(['A', 'A'], { look: 'water_tinted' })[1]).toBe(first)
    expect([from(['B', 'A'], { cellsPerMl: 5e6 }), b[1]]).toEqual([['B', first], second])
  })

  test('is of half of the algae in a day, shared between its feeds, and never under the first mark', () => {
    const room = new SnapshotBuilder()
    room.culture({ name: 'C1', kind: 'copepod', strain: null, volumeL: 10, startedAt: since })
    const { id } = room.culture({ name: 'A1', kind: 'microalgae', strain: null, volumeL: 1, startedAt: since })
    room.fact('count', id, '2026-03-09T08:00:00.000Z', { of: 'culture', animals: [1], volumeMl: 0.0001 })
    room.setting('copepod-feed', { parameters: { feedsPerDay: 2 } })
    const amounts = () => room.drafts(date, [copepodFeed]).drafts.map(({ content }) => content.amount?.value)
    // 25 L of 10,000 a mL are wanted: half of a litre in two feeds.
    expect(amounts()).toEqual([250, 250])
    room.fact('harvest', id, '2026-03-09T09:00:00.000Z', { volumeL: 1, parts: [{ to: 'drain', volumeL: 1 }] })
    expect(amounts()).toEqual([0.1, 0.1])
  })

  test('is asked from the round after its start on', () => {
    const { room } = copepods({ startedAt: `${date}T07:00:00.000Z` })
    room.setting('copepod-feed', { parameters: { feedsPerDay: 3 } })
    const rounds = () => room.drafts(date, [copepodFeed]).drafts.map(({ roundId }) => roundId)
    expect(rounds()).toEqual(['morning', 'midday', 'evening'])
    room.snapshot.cultures[0]!.startedAt = `${date}T07:01:00.000Z`
    expect(rounds()).toEqual(['midday', 'evening'])
  })

  test('that was more or less is written down as it was, thinned or not', () => {
    const draft = onlyDraft(copepods().room.drafts(date, [copepodFeed]))
    const [fact] = signOff(copepodFeed, draft, { amountMl: 2 }).facts
    expect(fact).toMatchObject({ data: { food: 'concentrate', amountMl: 0.02 } })
  })
})

describe('a harvest of nauplii', () => {
  const harvested = () => {
    const made = copepods()
    made.counted('2026-03-09T07:10:00.000Z', 2)
    return made
  }
  const adults = '2 per_mL adults counted'
  const share = [
    ...['and 1 per_mL of adults before a harvest', 'and 10 L in it', 'times 0.25 share of the water through the sieve'],
    'equals 2.5 L to sieve',
  ]

  test('by adults alone says what it takes, and with nauplii counted how many that are: 6 x 2,500', () => {
    const { room, counted } = harvested()
    const draft = () => onlyDraft(room.drafts(date, [copepodHarvest]))
    const idle = 'and 3 days from one harvest to the next while no larvae are fed'
    expect(whyLines(draft())).toEqual([adults, ...share, idle])
    expect(signOff(copepodHarvest, draft()).facts).toHaveLength(2)
    counted('2026-03-09T07:10:00.000Z', 6, 'copepod_nauplii')
    expect(whyLines(draft()).slice(0, 3)).toEqual([
      ...[adults, 'and 6 per_mL nauplii counted', 'and 15000 animals in what is sieved, about'],
    ])
    expect(saidSteps(draft()).slice(0, 4)).toEqual([
      'Count first, then harvest, then feed. Air off; a lamp at one side draws many nauplii there.',
      'Run 2.5 L through a sieve of 100 um, kept under water: what stays on it goes straight back.',
      'What passed goes over 40 um: those are the nauplii. Rinse them; the old water goes down the drain.',
      'Both sieves belong to C1: one rotifer carried in outgrows the copepods.',
    ])
  })

  test('that goes down the drain has the caution that none is released; others have not', () => {
    const { room } = harvested()
    const cautions = () => onlyDraft(room.drafts(date, [copepodHarvest])).content.cautions.join(' ')
    // Meant for other fish, of which there are none.
    expect(cautions()).toContain('Never release')
    room.pair({ name: 'Pair 1' })
    expect(cautions()).not.toContain('Never release')
    room.setting('copepod-harvest', { parameters: { restGoesTo: 'drain' } })
    expect(cautions()).toContain('Never release')
  })

  test('for larvae names them and what they want; of ones that nobody counted no number is made up', () => {
    const { room, culture } = harvested()
    const batch = room.batch({ hatchedOn: '2026-03-07', tankId: room.tank({ kind: 'larval', volumeL: 3 }).id })
    room.feedLink(batch, culture)
    const draft = onlyDraft(room.drafts(date, [copepodHarvest]))
    expect(whyLines(draft)).toEqual([
      ...[adults, ...share, 'and feeds Batch 1', 'and 2 per_mL nauplii a day in the larvae’s water'],
      'and 0.5 share of the water at most',
    ])
    const signed = (values: object) => signOff(copepodHarvest, draft, { ...values }).facts
    expect(signed({})[1]).toEqual({
      kind: 'feeding',
      subjectId: batch.id,
      data: { food: 'copepods', fromCultureId: culture.id, amountMl: 2500 },
    })
    expect(signed({ parts: [], filledL: 0 })).toEqual([])
  })

  test('is shared out to a jug’s mark, and the first gets what the marks leave over', () => {
    const { room, culture } = harvested()
    for (const volumeL of [3, 3, 1]) {
      const tankId = room.tank({ kind: 'larval', volumeL }).id
      room.feedLink(room.batch({ hatchedOn: '2026-03-07', tankId }), culture)
    }
    const { facts } = signOff(copepodHarvest, onlyDraft(room.drafts(date, [copepodHarvest])))
    const litres = facts.flatMap((fact) =>
      fact.kind === 'harvest' ? fact.data.parts.map(({ volumeL }) => volumeL) : [],
    )
    // 2.5 L by 3 : 3 : 1 are 1.07, 1.07 and 0.36 L.
    expect(litres).toEqual([1.15, 1, 0.35])
  })
})

describe('water and vessel', () => {
  test('the bottom is siphoned over a sieve, for the eggs, a fifth of the water at a time', () => {
    const { room, culture } = copepods()
    const draft = () => onlyDraft(room.drafts(date, [copepodSiphon]))
    expect([draft().roundId, saidTitle(draft())]).toEqual(['midday', '2 L new water, bottom siphoned'])
    expect(saidSteps(draft())).toEqual([
      'Air off; a thin hose, slowly over the bottom, onto the fine sieve: eggs lie there with the dirt.',
      'Rinse what the sieve holds into a cup, let the dirt settle, put back what swims and the eggs.',
      'New water in slowly, measured: 25 psu, 25 degC, within 1 of both.',
    ])
    const why = [
      'and 7 days from one siphoning to the next',
      'and 10 L in it',
      'times 0.2 share of the water',
      'equals 2 L to change',
    ]
    expect(whyLines(draft())).toEqual(['not yet siphoned', ...why])
    room.fact('care', culture.id, '2026-03-02T08:00:00.000Z', { act: 'siphon_bottom' })
    expect(whyLines(draft())).toEqual(['last siphoned', ...why])
    expect(signOff(copepodSiphon, draft(), { amountL: 3 }).facts[1]?.data).toEqual({ removedL: 3, addedL: 3 })
  })

  test('they are moved with half of their animals, and what is put in is said where they were counted', () => {
    const { room, culture, counted } = copepods({ startedAt: '2026-01-20T08:00:00.000Z' })
    const draft = () => onlyDraft(room.drafts(date, [copepodRestart]))
    expect([draft().roundId, draft().content.amountOf]).toEqual(['midday', 'the copepods'])
    expect(saidSteps(draft())[2]).toBe(
      'Look through a cup of them for rotifers and ciliates before they go in: pick, rinse, sieve again.',
    )
    const why = [
      ...['started or last restarted 2026-01-20', 'and 49 days of age', 'and 42 days from one restart to the next'],
      'and 0.5 share of its animals',
    ]
    expect(whyLines(draft())).toEqual(why)
    expect(signOff(copepodRestart, draft()).facts).toEqual([
      { kind: 'care', subjectId: culture.id, data: { act: 'restart_culture', litres: 10 } },
    ])
    counted('2026-03-08T07:10:00.000Z', 3.7)
    expect(whyLines(draft())).toEqual([...why, 'and 3.7 per_mL last counted'])
    expect(signOff(copepodRestart, draft()).facts[1]?.data).toEqual({ densityPerMl: 1.85 })
    expect(draft().content.cautions.join(' ')).toMatch(/Hypochlorite never meets acid/)
  })
})

describe('trouble', () => {
  test('is told with every sign, in words, and with the last three counts', () => {
    const { room, culture, counted } = copepods()
    room.fact('observation', culture.id, '2026-03-09T18:00:00.000Z', { signs: ['bad_smell', 'ciliates'] })
    for (const [index, perMl] of [8, 6, 4, 2].entries()) counted(`2026-03-0${index * 2 + 2}T07:10:00.000Z`, perMl)
    const draft = onlyDraft(room.drafts(date, [copepodTrouble]))
    expect([draft.roundId, saidTitle(draft)]).toEqual(['morning', 'See to it: it smells, ciliates, the counts fall'])
    expect((Date.parse(draft.lateAt) - Date.parse(draft.dueAt)) / 60_000).toBe(60)
    expect(saidSteps(draft).at(-1)).toBe('Touch no other culture with hands or tools that were in C1.')
    expect(whyLines(draft)).toEqual([
      ...['seen bad smell, ciliates', 'and 6 per_mL counted', 'and 4 per_mL counted', 'and 2 per_mL counted'],
      ...['and it smells, ciliates, the counts fall', 'and 24 hours that signs count for'],
    ])
  })

  test('has a word for each sign, and none for how the water looks', () => {
    const said = (
      sign: 'swimming_slow' | 'sinking' | 'clumping' | 'bad_smell' | 'foam' | 'ciliates' | 'water_green',
    ) => {
      const { room, culture } = copepods()
      room.fact('observation', culture.id, '2026-03-09T18:00:00.000Z', { signs: [sign] })
      return room.drafts(date, [copepodTrouble]).drafts.map(saidTitle)
    }
    expect(
      (['swimming_slow', 'sinking', 'clumping', 'bad_smell', 'foam', 'ciliates', 'water_green'] as const).map(said),
    ).toEqual([
      ...[
        ['See to it: they swim slowly'],
        ['See to it: they sink'],
        ['See to it: they clump'],
        ['See to it: it smells'],
      ],
      ...[['See to it: it foams'], ['See to it: ciliates'], []],
    ])
  })
})
