import { describe, expect, test } from 'vitest'
import { husbandryDay } from '../../calendar/husbandry-day.ts'
import { type HarvestPlan, harvestPlan } from '../../plans/harvest-plan.ts'
import { rotiferNeedL } from '../../plans/top-up-plan.ts'
import { saidSteps } from '../../testing/said-steps.ts'
import { saidTitle } from '../../testing/said-title.ts'
import { onlyDraft, SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { steadyCulture } from '../../testing/steady-culture.ts'
import { whyLines } from '../../testing/why-lines.ts'
import { harvestFacts, type Part, partSteps, partsField, restIn, suggestParts } from './harvest-parts.ts'
import { rotiferHarvest } from './rotifer-harvest.ts'

const date = '2026-03-10'

/** R1, 18 L at 25, thinned by 2.6 L today. */
function thinned() {
  const room = new SnapshotBuilder()
  const culture = steadyCulture(room, { date, name: 'R1' })
  const day = husbandryDay({ room: room.snapshot.room, date })
  const planned = () => {
    const plan = harvestPlan(room.build(), culture, day)
    if ('why' in plan) throw new Error(plan.why)
    return plan
  }
  const parts = (litres: number, more: Partial<HarvestPlan> = {}) =>
    suggestParts({ snapshot: room.build(), culture, day, plan: { ...planned(), ...more, litres }, rest: 'other_fish' })
  return { room, culture, day, parts, planned }
}
const amounts = (parts: Part[]) => parts.map(({ name, volumeL }) => [name, volumeL])
const said = (room: SnapshotBuilder, culture: ReturnType<typeof thinned>['culture'], parts: Part[]) =>
  saidSteps({ content: { steps: partSteps(room.build(), culture, parts) } })

describe('where a harvest goes', () => {
  test('what larvae eat today first, to the next mark of the jug, less what was set aside for them already', () => {
    const { room, culture, day, parts, planned } = thinned()
    const batch = room.batch({ hatchedOn: '2026-03-07', name: 'B1', tankId: room.tank({ volumeL: 10 }).id })
    expect(amounts(parts(2.6))).toEqual([['other fish', 2.6]])
    room.feedLink(batch, culture)
    const needL = rotiferNeedL(room.build(), batch, { culture, day })
    expect(needL).toBeGreaterThan(0.1)
    const [first, rest] = parts(2.6)
    expect(first).toMatchObject({ to: 'larval_batch', subjectId: batch.id, name: 'B1' })
    // Litres under one are poured to the next 10 mL.
    expect(first!.volumeL).toBeGreaterThanOrEqual(needL - 1e-9)
    expect(first!.volumeL - needL).toBeLessThan(0.01)
    expect(rest).toEqual({ to: 'other_fish', name: 'other fish', volumeL: Number((2.6 - first!.volumeL).toFixed(6)) })
    // From a litre on a jug shows tenths, and larvae get the next one up.
    const tank = room.snapshot.tanks.find(({ id }) => id === batch.tankId)!
    tank.volumeL = 100
    const largeL = rotiferNeedL(room.build(), batch, { culture, day })
    expect(largeL).toBeGreaterThan(1)
    expect(parts(9)[0]!.volumeL).toBe(Math.ceil(largeL * 10 - 1e-6) / 10)
    tank.volumeL = 10
    // No more than there is, and then nothing is left for anybody else.
    expect(amounts(parts(0.05))).toEqual([['B1', 0.05]])
    const aside = (subjectId: string, volumeL: number) => {
      const data = { volumeL, parts: [{ to: 'larval_batch' as const, subjectId, volumeL }] }
      const fact = room.fact('harvest', culture.id, '2026-03-10T06:50:00.000Z', data)
      room.snapshot.facts.pop()
      return { takenToday: [fact] as HarvestPlan['takenToday'] }
    }
    expect(planned().takenToday).toEqual([])
    expect(parts(2.6, aside(batch.id, 0.05))[0]!.volumeL).toBeCloseTo(first!.volumeL - 0.05, 2)
    expect(amounts(parts(2.6, aside(batch.id, 5)))).toEqual([['other fish', 2.6]])
    expect(parts(2.6, aside(culture.id, 5))[0]!.volumeL).toBe(first!.volumeL)
  })

  test('then to cultures that were made of it and never begun, in equal parts', () => {
    const { room, culture, parts } = thinned()
    const child = (name: string, more: Partial<typeof culture> = {}) =>
      room.culture({ name, startedAt: '2026-03-10T06:00:00.000Z', parentCultureId: culture.id, ...more })
    child('A2', { kind: 'microalgae', strain: null })
    room.culture({ name: 'R0', startedAt: '2026-03-10T06:00:00.000Z' })
    expect(amounts(parts(2.6))).toEqual([['other fish', 2.6]])
    const [one, two] = [child('R2'), child('R3')]
    expect(parts(2.6)).toEqual([
      { to: 'culture', subjectId: one.id, name: 'R2', volumeL: 1.3 },
      { to: 'culture', subjectId: two.id, name: 'R3', volumeL: 1.3 },
    ])
    // To a jug's mark each; what is over goes with the rest.
    expect(amounts(parts(1.33))).toEqual([
      ['R2', 0.66],
      ['R3', 0.66],
      ['other fish', 0.01],
    ])
    room.fact('inoculation', one.id, '2026-03-10T06:10:00.000Z', { animals: 1e6 })
    expect(amounts(parts(2.6))).toEqual([['R3', 2.6]])
    room.count(two, '2026-03-10T06:20:00.000Z', [40])
    expect(amounts(parts(2.6))).toEqual([['other fish', 2.6]])
  })

  test('all of a harvest may be said to have gone elsewhere: half as much again is likely, no more than the vessel may be', () => {
    const { culture } = thinned()
    const part = (volumeL: number): Part => ({ to: 'other_fish', name: 'other fish', volumeL })
    const suggested = [part(2), part(0.6)]
    expect(partsField(culture, suggested)).toMatchObject({
      ...{ type: 'parts', name: 'parts', isRequired: false, maximumL: 18, suggested },
      likelyMaximumL: expect.closeTo(3.9, 9),
    })
    expect(partsField(culture, [])).toMatchObject({ likelyMaximumL: 0.1 })
  })

  test('is written down with the animals that began or thickened another culture, and not at all where nothing was taken', () => {
    const parts = [
      { to: 'culture' as const, subjectId: 'R2', volumeL: 0.5 },
      { to: 'larval_batch' as const, subjectId: 'B1', volumeL: 0.25 },
      { to: 'culture' as const, volumeL: 0.1 },
      { to: 'drain' as const, volumeL: 0.05 },
    ]
    expect(harvestFacts({ subjectId: 'R1', parts, animalsPerL: 216_001 })).toEqual([
      { kind: 'harvest', subjectId: 'R1', data: { volumeL: 0.9, parts } },
      // 108,000.5: a whole number of animals.
      { kind: 'inoculation', subjectId: 'R2', data: { animals: 108_001, fromCultureId: 'R1' } },
    ])
    expect(harvestFacts({ subjectId: 'R1', parts: [], animalsPerL: 216_000 })).toEqual([])
    expect(harvestFacts({ subjectId: 'R1', parts: [{ to: 'drain', volumeL: 0 }], animalsPerL: 1 })).toEqual([])
  })
})

describe('what is said of each part', () => {
  const rest = (to: 'drain' | 'other_fish' | 'chilled_reserve'): Part => ({ to, name: to, volumeL: 2 })

  test('the jar gets a date, the drain is the drain, and other fish are named: the youngest three in grow-out, else the pairs', () => {
    const { room, culture } = thinned()
    const goes = (to: 'drain' | 'other_fish' | 'chilled_reserve') => said(room, culture, [rest(to)])
    expect(goes('chilled_reserve')).toEqual(['2 L of it into the refrigerator, dated.'])
    expect(goes('drain')).toEqual(['2 L of it to the drain.'])
    // While nobody lives there that could eat it, what is for other fish goes down the drain, in title and record too.
    expect(restIn(room.build(), 'other_fish')).toBe('drain')
    expect(restIn(room.build(), 'chilled_reserve')).toBe('chilled_reserve')
    room.pair({ name: 'Pair 1' })
    expect(restIn(room.build(), 'other_fish')).toBe('other_fish')
    expect(goes('other_fish')).toEqual(['2 L of it to other fish: Pair 1.'])
    const group = (name: string, settledOn: string, number: number) => room.group({ name, settledOn, number })
    group('G1', '2026-01-05', 20)
    expect(goes('other_fish')).toEqual(['2 L of it to other fish: G1.'])
    group('G2', '2026-02-05', 20)
    group('gone', '2026-02-20', 0)
    expect(goes('other_fish')).toEqual(['2 L of it to other fish: G2, G1.'])
    group('G3', '2026-01-20', 20)
    group('G4', '2026-01-20', 20)
    // Settled on one day they stand as they were written down.
    expect(goes('other_fish')).toEqual(['2 L of it to other fish: G2, G3, G4.'])
    room.snapshot.groups.reverse()
    expect(goes('other_fish')).toEqual(['2 L of it to other fish: G2, G3, G4.'])
  })

  test('water of another salinity is met before the pouring, whether larvae or another culture get it', () => {
    const { room, culture } = thinned()
    const batch = room.batch({ hatchedOn: '2026-03-07', name: 'B1', tankId: room.tank({ name: 'N', salinity: 35 }).id })
    room.batch({ hatchedOn: '2026-03-07', name: 'B0', tankId: room.tank({ salinity: 5 }).id })
    const other = room.culture({ name: 'R2', startedAt: '2026-03-10T06:00:00.000Z', salinity: 15 })
    const to = (part: Part) => said(room, culture, [part])
    expect(to({ to: 'larval_batch', subjectId: batch.id, name: 'B1', volumeL: 2 })).toEqual([
      'R1 is at 25 psu, B1 at 35 psu: rinse them into 0.5 L of water at 25 psu, with air.',
      'Add 0.5 L of water from B1 three times, 10 minutes apart; then they may go in.',
      '2 L of it to B1.',
    ])
    expect(to({ to: 'culture', subjectId: other.id, name: 'R2', volumeL: 2 })[0]).toContain('R2 at 15 psu')
    other.salinity = 21
    expect(to({ to: 'culture', subjectId: other.id, name: 'R2', volumeL: 2 })).toEqual(['2 L of it to R2.'])
  })
})

describe('a thinning', () => {
  test('is sieved, poured out, filled up and why, from the count to a jug’s mark', () => {
    const { room, culture, planned } = thinned()
    room.setting('rotifer-harvest', { parameters: { restGoesTo: 'drain' } })
    const draft = onlyDraft(room.drafts(date, [rotiferHarvest]))
    expect([draft.roundId, saidTitle(draft), draft.content.amountOf]).toEqual([
      ...['morning', '2.6 L out: the drain; new water in', 'culture'],
    ])
    const steps = saidSteps(draft)
    expect(steps.slice(1, 2)).toEqual(['Run 2.6 L through a sieve of 50 um, kept under water.'])
    expect(steps.slice(-3)).toEqual([
      '2.6 L of it to the drain.',
      'Fill it up to the mark, slowly, with new water at 25 psu and 25 degC, measured.',
      'Rinse the sieve; it stays with R1.',
    ])
    // What runs down the drain is not for the sea.
    expect(draft.content.cautions[0]).toBe('Never release stock or culture water into the wild.')
    const why = whyLines(draft)
    const shown = Number(planned().advice.shareOfVolume.toFixed(3))
    expect(why.slice(-4)).toEqual([
      expect.stringMatching(/^and 0\.2 share /),
      'and 18 L in it',
      `times ${shown} share for today: to the density at which it gives most over weeks`,
      'equals 2.6 L to take',
    ])
    expect(draft.content.fields.map(({ name }) => name)).toEqual(['parts', 'filledL'])
    room.setting('rotifer-harvest', { parameters: { restGoesTo: 'other_fish' } })
    room.pair({ name: 'Pair 1' })
    expect(onlyDraft(room.drafts(date, [rotiferHarvest])).content.cautions).toEqual([])
    expect(signOff(rotiferHarvest, draft).facts[0]?.subjectId).toBe(culture.id)
  })

  test('says what keeps it small: the floor that a room holds it above, or the most that may be taken', () => {
    const bound = (parameters: Record<string, number>) => {
      const { room } = thinned()
      room.setting('rotifer-harvest', { parameters })
      return whyLines(onlyDraft(room.drafts(date, [rotiferHarvest]))).at(-2)
    }
    // Counted 258 a mL at the most.
    expect(bound({ floorPerMl: 225 })).toMatch(/share for today: held above the floor$/)
    expect(bound({ mostShare: 0.1 })).toBe('times 0.1 share for today: the most that may be taken')
  })

  test('needs a count of the last days from the age on at which it is first thinned', () => {
    const gapsOf = (startedAt: string) => {
      const room = new SnapshotBuilder()
      const culture = room.culture({ name: 'R1', startedAt })
      room.count(culture, '2026-03-07T08:00:00.000Z', [200, 200, 200])
      return room.drafts(date, [rotiferHarvest]).gaps.length
    }
    expect([gapsOf('2026-03-07T07:00:00.000Z'), gapsOf('2026-03-06T07:00:00.000Z')]).toEqual([1, 1])
    const young = new SnapshotBuilder()
    young.setting('rotifer-harvest', { parameters: { firstHarvestAgeDays: 4 } })
    young.count(young.culture({ startedAt: '2026-03-07T07:00:00.000Z' }), '2026-03-07T08:00:00.000Z', [200])
    expect(young.drafts(date, [rotiferHarvest])).toEqual({ drafts: [], gaps: [] })
  })

  test('of which a drop goes down the drain is warned of, though the rest is eaten', () => {
    const { room, culture } = thinned()
    room.setting('rotifer-harvest', { parameters: { restGoesTo: 'drain' } })
    room.feedLink(room.batch({ hatchedOn: '2026-03-07', tankId: room.tank({ volumeL: 10 }).id }), culture)
    const draft = onlyDraft(room.drafts(date, [rotiferHarvest]))
    expect(draft.content.cautions[0]).toMatch(/^Never release/)
    // What was really poured where is what is kept.
    const parts = [{ to: 'other_fish', volumeL: 1 }]
    expect(signOff(rotiferHarvest, draft, { parts }).facts[0]).toMatchObject({ data: { volumeL: 1, parts } })
  })

  test('of which some is out already says how much, and asks for the rest', () => {
    const { room, culture } = thinned()
    for (const [volumeL, at] of [
      [1, '07:10'],
      [0.4, '07:20'],
    ] as const)
      room.fact('harvest', culture.id, `${date}T${at}:00.000Z`, { volumeL, parts: [{ to: 'drain', volumeL }] })
    expect(whyLines(onlyDraft(room.drafts(date, [rotiferHarvest]))).slice(-2)).toEqual([
      'minus 1.4 L taken already today',
      'equals 1.2 L to take',
    ])
  })

  test('kept before harvests were filled up at once is signed off as it was asked', () => {
    const { room } = thinned()
    const draft = onlyDraft(room.drafts(date, [rotiferHarvest]))
    const before = { ...draft, context: { ...(draft.context as object), fillsUp: undefined } }
    expect(signOff(rotiferHarvest, before).facts.map(({ kind }) => kind)).toEqual(['harvest'])
  })
})
