import type { CultureOutlook } from '@fryward/shared'
import { describe, expect, test } from 'vitest'
import { risingCulture } from '../../../husbandry/src/testing/rising-culture.ts'
import { SnapshotBuilder } from '../../../husbandry/src/testing/snapshot-builder.ts'
import { steadyCulture } from '../../../husbandry/src/testing/steady-culture.ts'
import { cultureOutlook } from './culture-outlook.ts'
import { endedCultureOutlook } from './ended-culture-outlook.ts'

const date = '2026-03-10'
const now = `${date}T12:00:00.000Z`

function outlookOf(
  make: (room: SnapshotBuilder) => ReturnType<SnapshotBuilder['culture']>,
  { at = now, ...query }: { at?: string; harvestShare?: number; days?: number } = {},
) {
  const room = new SnapshotBuilder()
  room.concentrate()
  const culture = make(room)
  return {
    culture,
    outlook: cultureOutlook({ snapshot: room.build(), culture, now: at, query: { days: 4, ...query } }),
  }
}
const steady = (room: SnapshotBuilder) => steadyCulture(room, { date })
const percents = ({ sentence }: CultureOutlook) => [...sentence.matchAll(/(\d+)%/g)].map(([, figure]) => Number(figure))
const percent = (share: number | null) => Math.round((share ?? Number.NaN) * 100)

describe('the picture of a culture', () => {
  test('is of what was counted and taken up to now, each as a share of the vessel', () => {
    const { culture, outlook } = outlookOf((room) => {
      const made = steady(room)
      room.fact('harvest', made.id, now, { volumeL: 36, parts: [{ to: 'drain', volumeL: 36 }] })
      room.fact('harvest', made.id, '2026-03-10T12:00:01.000Z', { volumeL: 1, parts: [{ to: 'drain', volumeL: 1 }] })
      return made
    })
    // 3.6 L of 18 L each day from the fifth to the twentieth; nobody takes more than all.
    expect(outlook.harvests.map(({ share }) => share)).toEqual([...Array(16).fill(0.2), 1])
    expect(outlook.harvests.at(-1)).toMatchObject({ at: now, volumeL: 36 })
    expect(outlook.counts).toHaveLength(21)
    // Twenty counts have one before them to be expected by; each stands where it was counted.
    const expected = outlook.behind.map(({ at }) => at)
    expect(outlook.counts.map(({ at }) => at)).toEqual(expect.arrayContaining(expected))
    expect(expected.length).toBeGreaterThan(15)
    for (const { p10, p50, p90 } of outlook.behind) expect(p10 < p50 && p50 < p90).toBe(true)
    expect(culture.volumeL).toBe(18)
  })

  test('begins ahead of now with what is there now, in bands', () => {
    const { outlook } = outlookOf(steady)
    expect(outlook.ahead.map(({ at }) => at)).toEqual([10, 11, 12, 13, 14].map((day) => `2026-03-${day}T12:00:00.000Z`))
    const [today] = outlook.ahead
    // Counted at 230 to 250 per mL this morning, and not harvested yet.
    expect(today!.p50).toBeGreaterThan(200)
    expect(today!.p50).toBeLessThan(300)
    expect(today!.p10).toBeLessThan(today!.p25)
    expect([today!.p25, today!.p75]).toEqual([today!.p50, today!.p50])
    expect(today!.p75).toBeLessThan(today!.p90)
    expect(outlook.sentence).toContain(`About ${Math.round(today!.p50)} per mL and `)
  })

  test('says what day after day keeps it, and warns of more', () => {
    const advised = outlookOf(steady).outlook
    const most = advised.sustainableSharePerDay!
    expect(most).toBeGreaterThan(0)
    expect(percents(advised).at(-1)).toBe(percent(most))
    const under = outlookOf(steady, { harvestShare: most }).outlook
    expect(under.sentence).toMatch(/Day after day \d+% keeps it/)
    expect(percents(under)).toEqual([percent(most)])
    const over = outlookOf(steady, { harvestShare: most + 0.02 }).outlook
    expect(over.sentence).toMatch(/a day is more, and thins it out/)
    expect(percents(over)).toEqual([percent(most + 0.02), percent(most)])
    expect(over.harvestSharePerDay).toBe(most + 0.02)
    expect(over.ahead.at(-1)!.p50).toBeLessThan(under.ahead.at(-1)!.p50)
  })

  test('of one that was not harvested for weeks tells what it can give today from what it gives each day', () => {
    const { outlook } = outlookOf((room) => risingCulture(room, { date, days: 7 }))
    expect(outlook.harvestSharePerDay).toBeGreaterThan(outlook.sustainableSharePerDay!)
    expect(outlook.sentence).toMatch(/and rising\. It can give \d+% today; day after day \d+% keeps it/)
    expect(percents(outlook)).toEqual([percent(outlook.harvestSharePerDay), percent(outlook.sustainableSharePerDay)])
  })

  test('of a backup is thinned for nobody, and by the list not at all', () => {
    const { outlook } = outlookOf((room) => steadyCulture(room, { date, isBackup: true }))
    expect(outlook.sentence).toMatch(/This is a backup: thinned only every few days/)
  })

  test('of one counted once, or whose growth nobody knows, shows the counts alone', () => {
    const bare = { behind: [], ahead: [], growthPerDay: null, sustainableSharePerDay: null }
    const once = (kind: 'rotifer' | 'copepod' | 'artemia_hatch') => (room: SnapshotBuilder) => {
      const culture = room.culture({ kind, startedAt: '2026-03-08T08:00:00.000Z' })
      room.count(culture, '2026-03-09T08:00:00.000Z', [60])
      return culture
    }
    const rotifers = outlookOf(once('rotifer'), { harvestShare: 0.2 }).outlook
    expect(rotifers).toMatchObject({
      ...bare,
      harvestSharePerDay: 0.2,
      sentence: expect.stringMatching(/^Count it twice/),
    })
    expect(rotifers.counts).toHaveLength(1)
    const copepods = outlookOf(once('copepod')).outlook
    expect(copepods).toMatchObject({ ...bare, harvestSharePerDay: 0, sentence: expect.stringMatching(/rotifers only/) })
    expect(copepods.counts).toHaveLength(1)
    const nauplii = outlookOf(once('artemia_hatch')).outlook
    expect(nauplii).toMatchObject({ ...bare, sentence: expect.stringMatching(/what was counted at its harvest/) })
  })
})

describe('the picture of a culture that has ended', () => {
  const ended = (reason: string | null, given: { counts?: number; endedAt?: string } = {}) => {
    const { counts = 21, endedAt = now } = given
    const room = new SnapshotBuilder()
    room.concentrate()
    const culture = counts === 21 ? steady(room) : room.culture({ startedAt: '2026-03-08T08:00:00.000Z' })
    return endedCultureOutlook({ snapshot: room.build(), culture, endedAt, reason })
  }
  test('ends then, at what stood in it', () => {
    const outlook = ended('It smelled.')
    expect(outlook.ahead).toEqual([])
    expect(outlook.behind.at(-1)?.at).toBe(now)
    const { p10, p50, p90 } = outlook.behind.at(-1)!
    expect(p10 < p50 && p50 < p90).toBe(true)
    expect(outlook).toMatchObject({ harvestSharePerDay: 0, sustainableSharePerDay: null })
    expect(outlook.growthPerDay).toEqual(expect.any(Number))
    expect(outlook.sentence).toBe(`Ended on 10 Mar: It smelled. It stood at about ${Math.round(p50)} per mL then.`)
    // Counted at half past six, and nothing of that is expected at the same moment twice.
    const byCount = ended(null, { endedAt: '2026-03-10T06:30:00.000Z' })
    expect(byCount.behind.filter(({ at }) => at === '2026-03-10T06:30:00.000Z')).toHaveLength(1)
    expect(byCount.sentence).toMatch(/^Ended on 10 Mar\. It stood at about/)
  })
  test('without counts says that it ended', () => {
    expect(ended(null, { counts: 0 })).toMatchObject({ behind: [], growthPerDay: null, sentence: 'Ended on 10 Mar.' })
  })
})
