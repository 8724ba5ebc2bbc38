import { freshWaterToAddL } from '@fryward/seawater'
import { describe, expect, test } from 'vitest'
import { saidTitle } from '../../testing/said-title.ts'
import { onlyDraft, SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { pairFeed } from '../broodstock/pair-feed.ts'
import { concentrateShake, concentrateUseBy } from '../microalgae/concentrates.ts'
import { microalgaeLook, microalgaeSplit } from '../microalgae/microalgae-culture.ts'
import { roomBatteryAir, roomEquipment, roomTools } from './room-care.ts'
import { tankTopUp } from './tank-top-up.ts'
import { tankWaterAct } from './tank-water-act.ts'
import { tankWaterChange } from './tank-water-change.ts'
import { tankWaterTest } from './tank-water-test.ts'
import { roomWaterToMix } from './water-to-mix.ts'

const date = '2026-03-10'

/** A pair's tank of 100 L at 35 with a filter, whose water was changed and tested on the 9th. */
function tankRoom() {
  const room = new SnapshotBuilder()
  const about = { kind: 'broodstock', volumeL: 100, salinity: 35, temperatureC: 26, hasFilter: true } as const
  const tank = room.tank({ name: 'Pair tank', ...about })
  room.pair({ tankId: tank.id })
  room.fact('water_change', tank.id, '2026-03-09T12:30:00.000Z', { removedL: 10, addedL: 10 })
  room.fact('water_test', tank.id, '2026-03-09T12:00:00.000Z', { temperatureC: 26 })
  return { room, tank }
}

describe('tanks', () => {
  test('are tested weekly, and record what was measured and nothing else', () => {
    const { room, tank } = tankRoom()
    room.setting('tank-water-change', { isOn: false })
    expect(room.drafts('2026-03-15', [tankWaterTest]).drafts).toEqual([])
    const draft = onlyDraft(room.drafts('2026-03-16', [tankWaterTest]))
    expect(signOff(tankWaterTest, draft, { temperatureC: 26.2, pH: 8.1 }).facts).toEqual([
      { kind: 'water_test', subjectId: tank.id, data: { temperatureC: 26.2, pH: 8.1 } },
    ])
  })

  test('have a tenth of their water changed weekly: 10 of 100 L', () => {
    const { room, tank } = tankRoom()
    room.setting('tank-water-test', { isOn: false })
    expect(room.drafts('2026-03-15', [tankWaterChange]).drafts).toEqual([])
    const draft = onlyDraft(room.drafts('2026-03-16', [tankWaterChange]))
    expect(draft.content.amount).toEqual({ value: 10, unit: 'L' })
    expect(signOff(tankWaterChange, draft).facts).toEqual([
      { kind: 'water_change', subjectId: tank.id, data: { removedL: 10, addedL: 10 } },
    ])
  })

  test('tested and changed on the same day are one task, which keeps both: the test of the old water first', () => {
    const { room, tank } = tankRoom()
    expect(room.drafts('2026-03-20', [tankWaterTest]).drafts).toEqual([])
    const draft = onlyDraft(room.drafts('2026-03-20', [tankWaterTest, tankWaterChange]))
    expect(saidTitle(draft)).toBe('10 L new water, water tested first')
    const typed = { temperatureC: 26.2, salinity: 36, nitriteNMgPerL: 0.1, newSalinity: 34.5 }
    expect(signOff(tankWaterChange, draft, typed).facts).toEqual([
      { kind: 'water_test', subjectId: tank.id, data: { temperatureC: 26.2, salinity: 36, nitriteNMgPerL: 0.1 } },
      { kind: 'water_change', subjectId: tank.id, data: { removedL: 10, addedL: 10, salinity: 34.5 } },
    ])
  })

  test('without a filter have half of it changed: 50 of 100 L', () => {
    const { room } = tankRoom()
    room.snapshot.tanks[0]!.hasFilter = false
    expect(onlyDraft(room.drafts('2026-03-16', [tankWaterChange])).content.amount).toEqual({ value: 50, unit: 'L' })
  })

  test('larval and storage tanks are left to their own rules, and empty ones ask for nothing', () => {
    const room = new SnapshotBuilder()
    for (const kind of ['larval', 'storage', 'broodstock', 'grow_out', 'quarantine'] as const) room.tank({ kind })
    room.group({ settledOn: '2026-02-01', number: 0, tankId: room.snapshot.tanks[3]!.id })
    expect(room.drafts(date, [tankWaterTest, tankWaterChange, tankWaterAct, tankTopUp])).toEqual({
      drafts: [],
      gaps: [],
    })
  })

  test('are topped up by a salinity that was read: 36 in 100 L asks for 2.9 L of fresh water', () => {
    const { room, tank } = tankRoom()
    room.fact('water_test', tank.id, '2026-03-12T06:30:00.000Z', { salinity: 36 })
    expect(freshWaterToAddL({ volumeL: 100, salinity: 36, targetSalinity: 35 })).toBeCloseTo(2.86, 2)
    const draft = onlyDraft(room.drafts('2026-03-12', [tankTopUp]))
    expect(draft.content.amount).toEqual({ value: 2.9, unit: 'L' })
    expect(signOff(tankTopUp, draft).facts).toEqual([
      { kind: 'water_change', subjectId: tank.id, data: { removedL: 0, addedL: 2.9, salinity: 0 } },
    ])
  })

  test('are topped up to the mark where nothing was read, and say which of the two it was', () => {
    const { room } = tankRoom()
    const draft = onlyDraft(room.drafts('2026-03-12', [tankTopUp]))
    expect(draft.content.amount).toBeNull()
    expect(draft.content.because[0]?.label).toBe('set, no fresh reading')
    expect(draft.content.fields[0]?.isRequired).toBe(true)
    expect(signOff(tankTopUp, draft, { addedL: 1.5 }).facts[0]).toMatchObject({ data: { addedL: 1.5, salinity: 0 } })
    expect(room.drafts(date, [tankTopUp]).drafts).toEqual([])
  })

  test('fresh water beyond a tenth of the tank is asked about, and beyond half of it refused', () => {
    const { room, tank } = tankRoom()
    const field = () => onlyDraft(room.drafts('2026-03-12', [tankTopUp])).content.fields[0]
    // In the smallest cup and to a jug's mark, of 100 L.
    expect(field()).toMatchObject({ minimum: 0.01, likelyMinimum: 0.01, likelyMaximum: 10, maximum: 50, step: 0.1 })
    room.fact('water_test', tank.id, '2026-03-12T06:30:00.000Z', { salinity: 36 })
    expect(field()).toMatchObject({ isRequired: false, usual: 2.9 })
  })

  test('are seen to at the station of those who live in them, the room itself after all', () => {
    const room = new SnapshotBuilder()
    for (const kind of ['quarantine', 'broodstock', 'grow_out'] as const)
      room.pair({ tankId: room.tank({ name: kind, kind }).id })
    const { drafts } = room.drafts(date, [tankWaterChange, roomEquipment])
    expect(drafts.map(({ subjectName, station }) => [subjectName, station])).toMatchObject([
      ['broodstock', 'broodstock'],
      ['grow_out', 'juveniles'],
      ['quarantine', 'quarantine'],
      [expect.any(String), 'room'],
    ])
  })

  test('with ammonia or nitrite read have water changed at once, are tested in the next round, and daily while any is left', () => {
    const { room, tank } = tankRoom()
    const read = (at: string, values: object) => room.fact('water_test', tank.id, at, { temperatureC: 26, ...values })
    const acts = () => room.drafts('2026-03-12', [tankWaterAct]).drafts
    // A tenth of the LC50 of juveniles is 10.9 mg/L of nitrite: the limit is 10, and half of it is what is left.
    read('2026-03-12T06:50:00.000Z', { nitriteNMgPerL: 9 })
    expect(acts()).toEqual([])
    read('2026-03-12T06:55:00.000Z', { nitriteNMgPerL: 8, totalAmmoniaNMgPerL: 1, pH: 8.2 })
    const draft = onlyDraft(room.drafts('2026-03-12', [tankWaterAct]))
    // At 26 C, pH 8.2 and 35 some 7 % of it is NH3: 0.07 mg/L, which half a change brings under 0.04.
    expect([draft.roundId, draft.content.amount]).toEqual(['morning', { value: 50, unit: 'L' }])
    expect(saidTitle(draft)).toBe('50 L new water, against ammonia')
    const fed = () =>
      room
        .drafts('2026-03-12', [pairFeed])
        .drafts[0]?.content.steps.map(({ text }) => text)
        .join(' ')
    expect(fed()).toContain('read {read} of ammonia, as N: no food before a new one reads less')
    room.append(signOff(tankWaterAct, draft).facts[0]!, { at: '2026-03-12T07:30:00.000Z' })
    expect(acts()).toEqual([])
    expect(onlyDraft(room.drafts('2026-03-12', [tankWaterTest])).roundId).toBe('midday')
    read('2026-03-12T12:40:00.000Z', { nitriteNMgPerL: 4, totalAmmoniaNMgPerL: 0.2, pH: 8.2 })
    expect(acts()).toEqual([])
    expect(room.drafts('2026-03-12', [tankWaterTest]).drafts).toEqual([])
    expect(fed()).not.toContain('no food')
    expect(onlyDraft(room.drafts('2026-03-13', [tankWaterTest])).roundId).toBe('morning')
    read('2026-03-13T07:00:00.000Z', { nitriteNMgPerL: 0.1, totalAmmoniaNMgPerL: 0, pH: 8.2 })
    expect(room.drafts('2026-03-14', [tankWaterTest]).drafts).toEqual([])
  })

  test('with nitrite alone over the limit have water changed, and are shown how much was read', () => {
    const { room, tank } = tankRoom()
    room.fact('water_test', tank.id, '2026-03-12T06:55:00.000Z', { temperatureC: 26, nitriteNMgPerL: 10.5 })
    const draft = onlyDraft(room.drafts('2026-03-12', [tankWaterAct]))
    expect(saidTitle(draft)).toContain('against nitrite')
    expect(draft.content.because[0]).toMatchObject({
      label: 'nitrite (as N)',
      quantity: { value: 10.5, unit: 'mg_per_L' },
      joins: null,
    })
  })

  test('changed as they were tested are not changed again for what that already took out', () => {
    const asked = (totalAmmoniaNMgPerL: number) => {
      const { room, tank } = tankRoom()
      room.fact('water_test', tank.id, '2026-03-16T12:30:00.000Z', { temperatureC: 26, pH: 8.2, totalAmmoniaNMgPerL })
      room.fact('water_change', tank.id, '2026-03-16T12:30:00.000Z', { removedL: 50, addedL: 50 })
      const again = room.drafts('2026-03-17', [tankWaterTest]).drafts.map(({ roundId }) => roundId)
      return { act: room.drafts('2026-03-16', [tankWaterAct]).drafts[0]?.content.amount?.value, again }
    }
    // At pH 8.2 some 7 % of it is poisonous: 0.07 of 1 mg/L, 0.035 after half a change; 0.14 of 2, of which 0.02 is to be left.
    expect(asked(1)).toEqual({ act: undefined, again: ['morning'] })
    expect(asked(2).act).toBe(50)
  })

  test('where some ammonia stands are not tested daily for ever: three days alike, then weekly until it rises', () => {
    const { room, tank } = tankRoom()
    room.setting('tank-water-change', { isOn: false })
    // At 26 C, pH 8.2 and 35 some 7 % of it is NH3: 0.028 mg/L, over half of the 0.04 at which one acts.
    const read = (on: string, totalAmmoniaNMgPerL = 0.4) =>
      room.fact('water_test', tank.id, `${on}T07:00:00.000Z`, { temperatureC: 26, pH: 8.2, totalAmmoniaNMgPerL })
    const tested = (on: string) => room.drafts(on, [tankWaterTest]).drafts.length
    for (const on of ['2026-03-10', '2026-03-11', '2026-03-12']) {
      expect(tested(on)).toBe(on === '2026-03-10' ? 0 : 1)
      read(on)
    }
    const again = () => onlyDraft(room.drafts('2026-03-12', [tankWaterTest])).content.steps.map(({ text }) => text)
    room.snapshot.facts.pop()
    expect(again().join(' ')).not.toContain('No filter runs here')
    tank.hasFilter = false
    expect(again().join(' ')).toContain('No filter runs here')
    read('2026-03-12')
    expect([tested('2026-03-13'), tested('2026-03-18'), tested('2026-03-19')]).toEqual([0, 0, 1])
    read('2026-03-19', 0.5)
    expect(tested('2026-03-20')).toBe(1)
  })

  test('without a filter are told to have one when ammonia is read', () => {
    const told = (hasFilter: boolean) => {
      const { room, tank } = tankRoom()
      tank.hasFilter = hasFilter
      room.fact('water_test', tank.id, '2026-03-12T06:55:00.000Z', {
        temperatureC: 26,
        pH: 8.2,
        totalAmmoniaNMgPerL: 1,
      })
      return onlyDraft(room.drafts('2026-03-12', [tankWaterAct]))
        .content.steps.map(({ text }) => text)
        .join(' ')
    }
    expect(told(false)).toContain('hang in a ripe sponge')
    expect(told(true)).not.toContain('hang in')
  })

  test('do not all have their water changed on one day: a hundred litres, the rest up to two days later', () => {
    const room = new SnapshotBuilder()
    for (const [name, volumeL] of [
      ['A', 160],
      ['B', 140],
      ['C', 60],
      ['D', 40],
    ] as const)
      room.group({ settledOn: '2026-02-01', tankId: room.tank({ name, kind: 'grow_out', volumeL }).id, number: 5 })
    const changed = (on: string) => room.drafts(on, [tankWaterChange]).drafts.map((draft) => draft.subjectName)
    // 80 and 20 L of the four, 70 and 30 the day after, for which water is mixed the evening before.
    expect(changed(date)).toEqual(['A', 'D'])
    expect(onlyDraft(room.drafts(date, [roomWaterToMix])).content.amount?.value).toBe(110)
    // A change against ammonia in another tank takes none of them off the list.
    room.fact('water_change', room.snapshot.tanks[2]!.id, `${date}T07:30:00.000Z`, { removedL: 30, addedL: 30 })
    expect(changed(date)).toEqual(['A', 'D'])
    for (const draft of room.drafts(date, [tankWaterChange]).drafts)
      room.append(signOff(tankWaterChange, draft, { temperatureC: 26 }).facts.at(-1)!, { at: `${date}T12:30:00.000Z` })
    expect(changed(date)).toEqual([])
    expect(changed('2026-03-11')).toEqual(['B'])
    for (const { id } of room.snapshot.tanks)
      room.fact('water_change', id, '2026-03-11T12:30:00.000Z', { removedL: 1, addedL: 1 })
    expect([changed('2026-03-17'), changed('2026-03-18')]).toEqual([[], ['A', 'D']])
    // Put off no longer than that.
    expect(changed('2026-03-20')).toEqual(['A', 'B', 'C', 'D'])
  })

  test('at their salinity need none', () => {
    const { room, tank } = tankRoom()
    room.fact('water_test', tank.id, '2026-03-12T06:30:00.000Z', { salinity: 34.8 })
    expect(room.drafts('2026-03-12', [tankTopUp]).drafts).toEqual([])
  })
})

describe('the room itself', () => {
  test('is looked over daily, its battery air tested monthly, its tools disinfected weekly', () => {
    const { room } = tankRoom()
    const next = { 'room-equipment': '2026-03-11', 'room-battery-air': '2026-04-09', 'room-tools': '2026-03-17' }
    for (const rule of [roomEquipment, roomBatteryAir, roomTools]) {
      const draft = onlyDraft(room.drafts(date, [rule]))
      expect(draft.content.cautions.at(-1)).toBe(
        'This is general information; follow local rules and your veterinarian.',
      )
      room.append(signOff(rule, draft).facts[0]!, { at: '2026-03-10T09:00:00.000Z' })
      expect(room.drafts(date, [rule]).drafts).toEqual([])
      const [, due] = Object.entries(next).find(([id]) => id === rule.id) ?? []
      expect(room.drafts(due ?? '', [rule]).drafts, rule.id).toHaveLength(1)
    }
  })

  test('mixes tonight what larvae and tanks change tomorrow', () => {
    const { room } = tankRoom()
    room.batch({ hatchedOn: '2026-03-06', tankId: room.tank({ name: 'Nursery', volumeL: 20, salinity: 30 }).id })
    // On the 16th the pair tank changes 10 L at 35, the nursery 20 x (0.2 + 6 x 0.02) = 6.4 L at 30; a tenth more.
    const steps = onlyDraft(room.drafts('2026-03-15', [roomWaterToMix])).content.steps
    expect(steps.slice(0, 2).map(({ quantities }) => [quantities.litres?.value, quantities.salinity?.value])).toEqual([
      [7, 30],
      [11, 35],
    ])
    // What falls due today is done today, and is not mixed for again.
    const today = onlyDraft(room.drafts('2026-03-16', [roomWaterToMix])).content.steps
    expect(today.filter(({ quantities }) => quantities.salinity?.value === 35)).toEqual([])
  })
})

describe('bottles and microalgae', () => {
  test('bottles are turned daily, and said to be old before their date and once they are', () => {
    const room = new SnapshotBuilder()
    room.concentrate({ name: 'old', useBy: '2026-03-09' })
    room.concentrate({ name: 'soon', useBy: '2026-03-15' })
    room.concentrate({ name: 'fresh', useBy: '2026-06-15', openedOn: '2026-03-01' })
    room.concentrate({ name: 'open', openedOn: '2026-01-01' })
    const { drafts } = room.drafts(date, [concentrateUseBy])
    expect(drafts.map(({ ordinal, content }) => [ordinal, saidTitle({ content })])).toEqual([
      [1, 'Discard old: past its time, open the next'],
      [2, 'Buy the next bottle of soon: this one is to be used by Sun 15 Mar'],
      [4, 'Discard open: past its time, open the next'],
    ])
    room.append(signOff(concentrateUseBy, drafts[1]!).facts[0]!, { at: '2026-03-10T07:10:00.000Z' })
    expect(room.drafts('2026-03-11', [concentrateUseBy]).drafts.map(({ ordinal }) => ordinal)).toEqual([1, 4])
    const shake = onlyDraft(room.drafts(date, [concentrateShake]))
    expect(saidTitle(shake)).toBe('Turn over fresh, old, open, soon')
    expect(signOff(concentrateShake, shake).facts[0]).toMatchObject({ data: { act: 'shake_bottle' } })
    expect(new SnapshotBuilder().drafts(date, [concentrateShake]).drafts).toEqual([])
    // What was fed from yesterday was shaken with its feeds.
    const fresh = room.snapshot.concentrates.find(({ name }) => name === 'fresh')
    const culture = room.culture({ startedAt: '2026-03-01T08:00:00.000Z' })
    room.fact('feeding', culture.id, '2026-03-09T07:05:00.000Z', { food: 'concentrate', concentrateId: fresh!.id })
    expect(saidTitle(onlyDraft(room.drafts(date, [concentrateShake])))).toBe('Turn over old, open, soon')
    expect(saidTitle(onlyDraft(room.drafts('2026-03-11', [concentrateShake])))).toContain('fresh')
  })

  test('a culture of microalgae is looked at daily and split weekly, not while it is pale', () => {
    const room = new SnapshotBuilder()
    const algae = room.culture({
      name: 'A1',
      kind: 'microalgae',
      strain: null,
      volumeL: 10,
      startedAt: '2026-03-03T08:00:00.000Z',
    })
    const look = onlyDraft(room.drafts(date, [microalgaeLook]))
    expect(look.station).toBe('microalgae')
    const [pale] = signOff(microalgaeLook, look, { colour: 'water_tinted' }).facts
    const split = onlyDraft(room.drafts(date, [microalgaeSplit]))
    expect(split.content.amount).toEqual({ value: 5, unit: 'L' })
    expect(signOff(microalgaeSplit, split).facts).toEqual([
      { kind: 'water_change', subjectId: algae.id, data: { removedL: 5, addedL: 5, salinity: 25 } },
    ])
    room.append(pale!, { at: '2026-03-10T07:05:00.000Z' })
    expect(room.drafts(date, [microalgaeSplit]).drafts).toEqual([])
  })

  test('what was fed from a culture of microalgae is a part of its split, and half of it fed fills it up sooner', () => {
    const fed = (volumeL: number, startedAt: string) => {
      const room = new SnapshotBuilder()
      const { id } = room.culture({ name: 'A1', kind: 'microalgae', strain: null, volumeL: 10, startedAt })
      room.fact('harvest', id, '2026-03-09T07:10:00.000Z', { volumeL, parts: [{ to: 'drain', volumeL }] })
      return room.drafts(date, [microalgaeSplit])
    }
    const weekly = onlyDraft(fed(3, '2026-03-03T08:00:00.000Z'))
    expect(weekly.content.amount).toEqual({ value: 5, unit: 'L' })
    expect(signOff(microalgaeSplit, weekly).facts[0]).toMatchObject({ data: { removedL: 2, addedL: 5 } })
    const sooner = onlyDraft(fed(6, '2026-03-08T08:00:00.000Z'))
    expect(signOff(microalgaeSplit, sooner).facts[0]).toMatchObject({ data: { removedL: 0, addedL: 6 } })
    expect(fed(4, '2026-03-08T08:00:00.000Z').drafts).toEqual([])
  })
})
