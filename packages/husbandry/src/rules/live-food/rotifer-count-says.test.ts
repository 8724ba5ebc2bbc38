import { describe, expect, test } from 'vitest'
import type { SnapshotCulture } from '../../snapshot/room-snapshot.ts'
import { saidSteps } from '../../testing/said-steps.ts'
import { saidTitle } from '../../testing/said-title.ts'
import { onlyDraft, SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { whyLines } from '../../testing/why-lines.ts'
import { rotiferCount } from './rotifer-count.ts'
import { rotiferEmpty } from './rotifer-empty.ts'

const date = '2026-03-10'

function culture(given: Partial<SnapshotCulture> = {}) {
  const room = new SnapshotBuilder()
  const made = room.culture({ name: 'R1', startedAt: '2026-02-01T08:00:00.000Z', ...given })
  room.culture({ name: 'A1', kind: 'microalgae', strain: null, startedAt: '2026-02-01T08:00:00.000Z' })
  const counted = (at: string, perMl = 200) => room.count(made, at, [perMl, perMl, perMl])
  const asked = (on = date) => room.drafts(on, [rotiferCount]).drafts
  return { room, culture: made, counted, asked }
}

describe('a count', () => {
  test('is of rotifers and eggs, and says how old the culture is until there is a first one, then when that was', () => {
    const { asked, counted } = culture({ startedAt: '2026-03-08T08:00:00.000Z' })
    expect(saidTitle(asked()[0])).toBe('Count rotifers and eggs')
    expect(whyLines(asked()[0])).toEqual([
      ...['started, not counted yet 2026-03-08', 'and 7 days old: counted daily until then', 'and 2 days of age'],
    ])
    expect(asked()[0]?.content.fields[0]).toMatchObject({ isRequired: true, usual: null })
    counted('2026-03-08T09:00:00.000Z', 210)
    expect(whyLines(asked()[0])).toEqual([
      ...['210 per_mL last counted', 'and 7 days old: counted daily until then'],
      'and 2 days since the count of 2026-03-08',
    ])
    // Nobody counts what is begun tomorrow.
    expect(culture({ startedAt: '2026-03-11T08:00:00.000Z' }).asked()).toEqual([])
  })

  test('is daily in the first seven days, the day after a harvest and while larvae eat, else every second day', () => {
    const young = (startedAt: string) => {
      const { counted, asked } = culture({ startedAt })
      counted('2026-03-09T07:00:00.000Z')
      return asked().length
    }
    expect([young('2026-03-04T08:00:00.000Z'), young('2026-03-03T08:00:00.000Z')]).toEqual([1, 0])
    const harvested = (at: string) => {
      const { room, culture: made, counted, asked } = culture()
      room.fact('harvest', made.id, at, { volumeL: 3, parts: [{ to: 'drain', volumeL: 3 }] })
      room.fact('water_change', made.id, '2026-03-09T08:00:00.000Z', { removedL: 1, addedL: 1 })
      counted('2026-03-09T09:00:00.000Z')
      return whyLines(asked()[0])
    }
    expect(harvested('2026-03-09T07:30:00.000Z')[1]).toBe('and 3 L harvested')
    expect(harvested('2026-03-08T07:30:00.000Z')).toEqual([])
    const { room, culture: made, counted, asked } = culture()
    counted('2026-03-09T07:00:00.000Z')
    for (const name of ['B1', 'B2']) room.feedLink(room.batch({ name, hatchedOn: '2026-03-06' }), made)
    expect(whyLines(asked()[0])[1]).toBe('and feeds B1, B2')
    const rare = culture()
    rare.counted('2026-03-08T07:00:00.000Z')
    expect(whyLines(rare.asked()[0])[1]).toBe('and 2 days from one count to the next')
  })

  test('of three samples looks at them alive first; more than three hundred in one are thinned', () => {
    const steps = (perMl: number) => {
      const { room, counted, asked } = culture({ isBackup: true })
      room.setting('rotifer-count', { parameters: { backupEveryDays: 1 } })
      // A day before the first round: it is what is expected.
      counted('2026-03-09T07:00:00.000Z', perMl)
      return saidSteps(asked()[0])
    }
    const few = steps(300)
    expect(few[1]).toBe('Take 3 samples of 1 mL from different places, before feeding.')
    expect(few[4]).toBe(
      'Dilute only when a sample holds more than some 300 animals: 1 in 10, and write 10 as the dilution.',
    )
    // 301 to half of 300 at the most: 1 in 3; 450 to the same; 451 takes a fourth part.
    expect(steps(301)[4]).toBe('Expected are about 300 animals in a sample: dilute each 1 in 3, and write that down.')
    expect([steps(450)[4], steps(451)[4]]).toEqual([
      expect.stringContaining('1 in 3,'),
      expect.stringContaining('1 in 4,'),
    ])
  })

  test('is more or fewer samples where a room says so', () => {
    const { room, asked } = culture()
    room.setting('rotifer-count', { parameters: { replicates: 5 } })
    const [draft] = asked()
    expect(saidSteps(draft)[1]).toContain('Take 5 samples')
    expect(draft?.content.fields[0]).toMatchObject({ replicates: 5 })
  })
})

describe('a vessel that stands empty', () => {
  /** R1 was begun again yesterday evening and nothing put in; R2 holds so many. */
  function empty(perMl: number | null) {
    const room = new SnapshotBuilder()
    const startedAt = '2026-02-01T08:00:00.000Z'
    const made = room.culture({ name: 'R1', startedAt })
    room.count(made, '2026-03-08T06:30:00.000Z', [300, 300, 300])
    room.fact('care', made.id, '2026-03-09T19:00:00.000Z', { act: 'restart_culture' })
    const other = perMl === null ? null : room.culture({ name: 'R2', startedAt })
    if (other) room.count(other, `${date}T06:30:00.000Z`, [perMl!, perMl!, perMl!])
    const asked = (on = date) => room.drafts(on, [rotiferEmpty]).drafts
    return { room, culture: made, other, asked }
  }

  test('is asked about from the day after it was begun again, and a vessel of algae never', () => {
    const { room, culture: made, asked } = empty(null)
    expect([asked('2026-03-09').length, asked().length]).toEqual([0, 1])
    room.snapshot.facts.pop()
    room.fact('care', made.id, `${date}T00:00:00.000Z`, { act: 'restart_culture' })
    expect([asked().length, asked('2026-03-11').length]).toEqual([0, 1])
    made.kind = 'microalgae'
    expect(asked('2026-03-11')).toEqual([])
  })

  test('with nobody to give any asks for as many as begin it, and takes a tenth to ten times as many', () => {
    const { asked, culture: made } = empty(null)
    const draft = onlyDraft({ drafts: asked(), gaps: [] })
    // 63 a mL in 18 L, to two figures.
    expect(saidTitle(draft)).toBe('Order 1.1 million live rotifers: it stands empty')
    expect([draft.roundId, draft.content.amountOf, draft.content.verb]).toEqual(['morning', 'live rotifers', 'check'])
    expect(saidSteps(draft)).toHaveLength(5)
    expect(saidSteps(draft)[2]).toContain('apart for 14 days')
    expect(draft.content.fields).toMatchObject([
      { name: 'animals', usual: null, likelyMinimum: 110_000, likelyMaximum: 11_000_000 },
    ])
    expect(whyLines(draft)).toEqual([
      'begun again, and nothing put in 2026-03-09',
      ...['and 18 L in it', 'times 63 per_mL to start with', 'equals no culture to take it from'],
    ])
    expect(signOff(rotiferEmpty, draft, { animals: 900_000.4 }).facts).toEqual([
      { kind: 'inoculation', subjectId: made.id, data: { animals: 900_000 } },
    ])
  })

  test('beside one that can give some is begun from that: 63 x 18 / (200 x 0.9) = 6.3 L, or what was really taken', () => {
    const { asked, culture: made, other } = empty(200)
    const draft = onlyDraft({ drafts: asked(), gaps: [] })
    expect(saidTitle(draft)).toBe('6.3 L of R2, sieved, for a new start')
    expect(draft.content).toMatchObject({ amount: { value: 6.3, unit: 'L' }, amountOf: 'R2, sieved', verb: 'restart' })
    expect(saidSteps(draft)).toEqual([
      'See to R2 first, and only then touch this vessel.',
      expect.stringMatching(/^Clean, with new water/),
      expect.stringMatching(/^Do animals swim in it already/),
    ])
    expect(draft.content.fields).toMatchObject([{ name: 'amountL', label: 'Of R2', usual: 6.3, maximum: 18 }])
    expect(whyLines(draft).slice(-2)).toEqual(['divided by 200 per_mL counted', 'equals 6.3 L to take'])
    // 5 L of 180,000 alive.
    expect(signOff(rotiferEmpty, draft, { amountL: 5 }).facts).toEqual([
      {
        ...{ kind: 'harvest', subjectId: other!.id },
        data: { volumeL: 5, parts: [{ to: 'culture', subjectId: made.id, volumeL: 5 }] },
      },
      { kind: 'inoculation', subjectId: made.id, data: { animals: 900_000, fromCultureId: other!.id } },
    ])
  })
})
