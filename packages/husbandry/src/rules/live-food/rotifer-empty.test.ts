import { expect, test } from 'vitest'
import { onlyDraft, SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { larvalPreyTopUp } from '../larvae/prey-top-up.ts'
import { cultureWaterTest } from './culture-water-test.ts'
import { rotiferBrush } from './rotifer-brush.ts'
import { rotiferCount } from './rotifer-count.ts'
import { rotiferEmpty } from './rotifer-empty.ts'
import { rotiferRescue } from './rotifer-rescue.ts'

const date = '2026-03-10'
const tomorrow = '2026-03-11'
const startedAt = '2026-02-20T08:00:00.000Z'

/** R1 was lost and cleaned out this morning, with nothing in the room to begin it with. */
function cleanedOut() {
  const room = new SnapshotBuilder()
  const culture = room.culture({ name: 'R1', startedAt, volumeL: 18 })
  room.count(culture, '2026-03-08T06:30:00.000Z', [300, 300, 300])
  room.count(culture, '2026-03-10T06:30:00.000Z', [5, 5, 5])
  const rescue = onlyDraft(room.drafts(date, [rotiferRescue]))
  expect(rescue.content.amount).toBeNull()
  for (const fact of signOff(rotiferRescue, rescue).facts) room.append(fact, { at: '2026-03-10T07:10:00.000Z' })
  return { room, culture }
}
const asked = (room: SnapshotBuilder, on = tomorrow) => room.drafts(on, [rotiferRescue, rotiferEmpty]).drafts

test('an empty vessel asks for animals every day until somebody writes how many went in', () => {
  const { room, culture } = cleanedOut()
  expect(asked(room, date)).toEqual([])
  const draft = onlyDraft({ drafts: asked(room), gaps: [] })
  // 50-150 per mL for an inoculum: ICAR e-course on rotifers (text of FAO Fish. Tech. Pap. 361); here 63, in 18 L.
  expect(draft.content.amount).toEqual({ value: 1_100_000, unit: 'animals' })
  expect(signOff(rotiferEmpty, draft).facts).toEqual([])
  // Nobody has looked yet: a count says whether it is. What has only new water in it is neither brushed nor tested.
  const others = (on: string) =>
    room.drafts(on, [rotiferCount, rotiferBrush, cultureWaterTest]).drafts.map(({ ruleId }) => ruleId)
  expect(others(tomorrow)).toEqual(['rotifer-count'])
  room.count(culture, '2026-03-12T06:30:00.000Z', [0, 0, 0])
  expect(others('2026-03-13')).toEqual([])
  expect(asked(room, '2026-03-13')).toHaveLength(1)
  const [bought] = signOff(rotiferEmpty, draft, { animals: 900_000 }).facts
  expect(bought).toEqual({ kind: 'inoculation', subjectId: culture.id, data: { animals: 900_000 } })
  room.append(bought!, { at: '2026-03-13T07:10:00.000Z' })
  expect(others('2026-03-14')).toContain('rotifer-count')
  expect(asked(room, '2026-03-13')).toEqual([])
})

test('a vessel in which somebody counted animals is not empty, whoever forgot to write that they went in', () => {
  const { room, culture } = cleanedOut()
  room.count(culture, '2026-03-11T06:30:00.000Z', [0, 1, 0])
  expect(asked(room)).toEqual([])
  const never = new SnapshotBuilder()
  never.culture({ name: 'R9', startedAt })
  expect(asked(never)).toEqual([])
})

test('is begun from another as soon as one can give some', () => {
  const { room, culture } = cleanedOut()
  const other = room.culture({ name: 'R2', startedAt, volumeL: 18 })
  room.count(other, '2026-03-11T06:30:00.000Z', [200, 200, 200])
  const draft = onlyDraft({ drafts: asked(room), gaps: [] })
  const { facts } = signOff(rotiferEmpty, draft)
  expect(facts.map(({ kind, subjectId }) => [kind, subjectId])).toEqual([
    ['harvest', other.id],
    ['inoculation', culture.id],
  ])
  // What leaves the one comes into the other, but for a tenth that sieving takes (live-feed, DEFAULT_SIEVING_LOSS).
  const litres = facts.flatMap((fact) => (fact.kind === 'harvest' ? fact.data.volumeL : []))
  const put = facts.flatMap((fact) => (fact.kind === 'inoculation' ? (fact.data.animals ?? 0) : []))
  expect(put[0]! / (litres[0]! * 200_000)).toBeCloseTo(0.9, 6)
})

test('two empty vessels share what one can give, and neither is promised the other’s part', () => {
  const { room } = cleanedOut()
  const second = room.culture({ name: 'R4', startedAt, volumeL: 18 })
  room.count(second, '2026-03-08T06:30:00.000Z', [300, 300, 300])
  room.fact('care', second.id, '2026-03-10T07:20:00.000Z', { act: 'restart_culture' })
  const other = room.culture({ name: 'R2', startedAt, volumeL: 18 })
  room.count(other, '2026-03-11T06:30:00.000Z', [150, 150, 150])
  const given = () => asked(room).map(({ content }) => content.amount)
  // Half of 18 L may go in a day; nobody eats of it here.
  expect(given()).toEqual([
    { value: 4.5, unit: 'L' },
    { value: 4.5, unit: 'L' },
  ])
  // One has been begun: the other is asked for no more than its part of what is left.
  for (const fact of signOff(rotiferEmpty, asked(room)[0]!).facts) room.append(fact, { at: '2026-03-11T07:10:00.000Z' })
  expect(given()).toHaveLength(1)
  expect(given()[0]!.value).toBeGreaterThan(0)
  expect(given()[0]!.value).toBeLessThanOrEqual(4.5)
})

test('of the last sound culture half of what it can give begins another, though larvae want all of it; of two it waits', () => {
  const given = (many: 1 | 2) => {
    const { room } = cleanedOut()
    const tank = room.tank({ name: 'Nursery', volumeL: 150 })
    const batch = room.batch({ hatchedOn: '2026-03-08', tankId: tank.id, larvae: 300 })
    for (const name of ['R2', 'R3'].slice(0, many)) {
      const other = room.culture({ name, startedAt, volumeL: 18 })
      room.count(other, '2026-03-11T06:30:00.000Z', [200, 200, 200])
      room.feedLink(batch, other)
    }
    expect(room.drafts(tomorrow, [larvalPreyTopUp]).drafts.length).toBeGreaterThan(0)
    return onlyDraft({ drafts: asked(room), gaps: [] }).content.amount
  }
  // Half of 18 L is what it can give in a day, and half of that.
  expect(given(1)).toEqual({ value: 4.5, unit: 'L' })
  // R3 feeds nobody as long as R2 does, so all of what it gives is there for a new start: 63 per mL in 18 L.
  expect(given(2)?.value).toBeGreaterThan(4.5)
})
