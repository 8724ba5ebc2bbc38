import { describe, expect, test } from 'vitest'
import { onlyDraft, SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { rotiferCount } from './rotifer-count.ts'

const counts = (room: SnapshotBuilder, date: string) => room.drafts(date, [rotiferCount])

describe('counting rotifers', () => {
  test('is asked the day after a start, daily in the first week, in the first round', () => {
    const room = new SnapshotBuilder()
    const culture = room.culture({ startedAt: '2026-03-01T08:00:00.000Z' })
    room.fact('inoculation', culture.id, '2026-03-01T08:00:00.000Z', { densityPerMl: 63 })
    expect(counts(room, '2026-03-01').drafts).toEqual([])
    expect(onlyDraft(counts(room, '2026-03-02')).roundId).toBe('morning')
    room.count(culture, '2026-03-02T07:00:00.000Z', [80, 82, 79])
    expect(counts(room, '2026-03-02').drafts).toEqual([])
    expect(counts(room, '2026-03-03').drafts).toHaveLength(1)
  })

  test('is asked on the first day of a culture of which nothing is known', () => {
    const room = new SnapshotBuilder()
    room.culture({ startedAt: '2026-03-01T08:00:00.000Z' })
    expect(counts(room, '2026-03-01').drafts).toHaveLength(1)
  })

  test('later every second day, daily again after a harvest or while it feeds larvae', () => {
    const old = () => {
      const room = new SnapshotBuilder()
      const culture = room.culture({ startedAt: '2026-02-01T08:00:00.000Z' })
      room.count(culture, '2026-03-01T07:00:00.000Z', [200, 210, 190])
      return { room, culture }
    }
    expect(counts(old().room, '2026-03-02').drafts).toEqual([])
    expect(counts(old().room, '2026-03-03').drafts).toHaveLength(1)
    const harvested = old()
    harvested.room.fact('harvest', harvested.culture.id, '2026-03-01T07:20:00.000Z', {
      volumeL: 3,
      parts: [{ to: 'drain', volumeL: 3 }],
    })
    expect(counts(harvested.room, '2026-03-02').drafts).toHaveLength(1)
    const linked = old()
    linked.room.feedLink(linked.room.batch({ hatchedOn: '2026-02-27' }), linked.culture)
    expect(onlyDraft(counts(linked.room, '2026-03-02')).content.because[1]?.text).toBe('Batch 1')
  })

  test('a backup is counted every third day, whatever its age', () => {
    const room = new SnapshotBuilder()
    const backup = room.culture({ startedAt: '2026-03-01T08:00:00.000Z', isBackup: true })
    room.count(backup, '2026-03-02T07:00:00.000Z', [90])
    expect(counts(room, '2026-03-04').drafts).toEqual([])
    expect(counts(room, '2026-03-05').drafts).toHaveLength(1)
  })

  test('doubts a count that is a third or three times what is expected, and refuses what no culture has held', () => {
    const room = new SnapshotBuilder()
    const culture = room.culture({ startedAt: '2026-02-01T08:00:00.000Z' })
    room.count(culture, '2026-03-01T07:00:00.000Z', [200, 210, 190])
    // Expected on the day itself is the count: 200 per mL.
    const [field] = onlyDraft(counts(room, '2026-03-03')).content.fields
    expect(field).toMatchObject({ type: 'count', maximum: 160_000, replicates: 3, volumeMl: 1, withEggs: true })
    if (field?.type !== 'count' || field.usual === null) throw new Error('a count field with its usual value')
    expect(field.usual).toBeGreaterThanOrEqual(100)
    expect(field.usual).toBeLessThanOrEqual(400)
    expect(field.likelyMaximum / field.likelyMinimum).toBeCloseTo(9, 6)
    expect(field.likelyMaximum / field.usual).toBeGreaterThan(2.9)
    expect(field.likelyMaximum / field.usual).toBeLessThan(3.1)
  })

  test('so many that nobody keeps count of them are diluted first, to half of what one counts at once', () => {
    const steps = (perMl: number) => {
      const room = new SnapshotBuilder()
      const culture = room.culture({ startedAt: '2026-02-01T08:00:00.000Z', isBackup: true })
      room.count(culture, '2026-03-09T07:00:00.000Z', [perMl, perMl, perMl])
      room.setting('rotifer-count', { parameters: { backupEveryDays: 1 } })
      const draft = onlyDraft(counts(room, '2026-03-10'))
      const [field] = draft.content.fields
      const expected = field?.type === 'count' ? (field.usual ?? 0) : 0
      return { expected, said: draft.content.steps.map(({ text }) => text).join(' ') }
    }
    const [few, many] = [steps(200), steps(330)]
    expect(few.expected).toBeLessThan(300)
    expect(few.said).toContain('1 in 10')
    expect(many.expected).toBeGreaterThan(300)
    expect(many.expected).toBeLessThan(450)
    // 150 of them in what is counted: half of the three hundred that one counts without losing one's place.
    expect(many.said).toContain('dilute each 1 in 3,')
  })

  test('a first count is believed from a thin start to a dense small culture, and asked about beyond', () => {
    const room = new SnapshotBuilder()
    room.culture({ startedAt: '2026-03-01T08:00:00.000Z' })
    const [field] = onlyDraft(counts(room, '2026-03-01')).content.fields
    // Starts of 50-150 and vessels of 1,000 a mL and more: ICAR e-course on rotifers (text of FAO Fish. Tech. Pap. 361).
    expect(field).toMatchObject({ likelyMinimum: 20, likelyMaximum: 1500 })
  })

  test('signing off records the replicates with their eggs, and the signs seen', () => {
    const room = new SnapshotBuilder()
    const culture = room.culture({ startedAt: '2026-03-01T08:00:00.000Z' })
    const draft = onlyDraft(counts(room, '2026-03-01'))
    const count = { animals: [80, 84, 76], volumeMl: 1, eggs: 30, females: 60 }
    expect(signOff(rotiferCount, draft, { count, signs: ['ciliates'] }).facts).toEqual([
      { kind: 'count', subjectId: culture.id, data: { of: 'culture', dilution: 1, ...count } },
      { kind: 'observation', subjectId: culture.id, data: { signs: ['ciliates'] } },
    ])
  })
})
