import { expect, test } from 'vitest'
import { disinfectionCautions, electricityCautions } from '../../task/cautions.ts'
import { saidTitle } from '../../testing/said-title.ts'
import { onlyDraft, SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { whyLines } from '../../testing/why-lines.ts'
import { roomBatteryAir, roomEquipment, roomTools } from './room-care.ts'

const date = '2026-03-10'
const all = [roomEquipment, roomBatteryAir, roomTools]

test('a room with anything alive in it, fish or food, is looked over; an empty one is not', () => {
  const asked = (room: SnapshotBuilder) => room.drafts(date, all).drafts.map(({ ruleId }) => ruleId)
  const whole = ['room-equipment', 'room-battery-air', 'room-tools']
  expect(asked(new SnapshotBuilder())).toEqual([])
  const withTank = new SnapshotBuilder()
  withTank.tank()
  const withFood = new SnapshotBuilder()
  withFood.culture({ startedAt: '2026-03-01T08:00:00.000Z' })
  expect([asked(withTank), asked(withFood)]).toEqual([whole, whole])
})

test('plugs come first thing, the battery at noon, the tools last of all, each with its own caution and what it keeps', () => {
  const room = new SnapshotBuilder()
  room.tank()
  const drafts = room.drafts(date, all).drafts
  expect(drafts.map((draft) => [draft.roundId, draft.content.verb, saidTitle(draft)])).toEqual([
    ['morning', 'check', 'Look over air, heaters, pumps and plugs'],
    ['midday', 'test', 'Test the battery air'],
    ['evening', 'clean', 'Disinfect nets, sieves, hoses and beakers'],
  ])
  expect(drafts.map(({ content }) => content.cautions)).toEqual([
    ...[electricityCautions, electricityCautions, disinfectionCautions],
  ])
  expect(drafts.map(({ content }) => content.fields.map(({ name }) => name))).toEqual([['note'], ['note'], []])
  expect(drafts.map(({ isForStandIn }) => isForStandIn)).toEqual([true, true, true])
  const kept = all.map((rule, index) => signOff(rule, drafts[index]!, { note: 'R2 drips.' }).facts)
  const subjectId = room.snapshot.room.id
  expect(kept).toEqual(
    ['look_over_equipment', 'test_battery_air', 'disinfect_tools'].map((act) => [
      { kind: 'care', subjectId, data: { act, note: 'R2 drips.' } },
    ]),
  )
  expect(signOff(roomTools, drafts[2]!).facts[0]?.data).toEqual({ act: 'disinfect_tools' })
})

test('what was done early is not asked for again before its time, and says when it was done', () => {
  const room = new SnapshotBuilder()
  room.tank()
  expect(whyLines(onlyDraft(room.drafts(date, [roomTools])))[0]).toBe('not yet done')
  room.fact('care', room.snapshot.room.id, '2026-03-04T20:00:00.000Z', { act: 'disinfect_tools' })
  expect(room.drafts(date, [roomTools]).drafts).toEqual([])
  const draft = onlyDraft(room.drafts('2026-03-11', [roomTools]))
  expect(whyLines(draft)).toEqual(['last done', expect.stringMatching(/^and 7 days /)])
})
