import { freshWaterToAddL } from '@fryward/seawater'
import { describe, expect, test } from 'vitest'
import { saidTitle } from '../../testing/said-title.ts'
import { onlyDraft, SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { juvenileCount } from '../juveniles/juvenile-count.ts'
import { juvenileFeed } from '../juveniles/juvenile-feed.ts'
import { concentrateShake, concentrateUseBy } from '../microalgae/concentrates.ts'
import { microalgaeLook, microalgaeSplit } from '../microalgae/microalgae-culture.ts'
import { quarantineWatch } from '../quarantine/quarantine-watch.ts'
import { roomBatteryAir, roomEquipment, roomTools } from './room-care.ts'
import { tankTopUp } from './tank-top-up.ts'
import { tankWaterChange } from './tank-water-change.ts'
import { tankWaterTest } from './tank-water-test.ts'
import { roomWaterToMix } from './water-to-mix.ts'

const date = '2026-03-10'

/** A broodstock tank of 100 L at 35 whose water was changed and tested on the 9th. */
function tankRoom() {
  const room = new SnapshotBuilder()
  const tank = room.tank({ name: 'Pair tank', kind: 'broodstock', volumeL: 100, salinity: 35, temperatureC: 26 })
  room.fact('water_change', tank.id, '2026-03-09T12:30:00.000Z', { removedL: 10, addedL: 10 })
  room.fact('water_test', tank.id, '2026-03-09T12:00:00.000Z', { temperatureC: 26 })
  return { room, tank }
}

describe('tanks', () => {
  test('are tested weekly, and record what was measured and nothing else', () => {
    const { room, tank } = tankRoom()
    expect(room.drafts('2026-03-15', [tankWaterTest]).drafts).toEqual([])
    const draft = onlyDraft(room.drafts('2026-03-16', [tankWaterTest]))
    expect(signOff(tankWaterTest, draft, { temperatureC: 26.2, pH: 8.1 }).facts).toEqual([
      { kind: 'water_test', subjectId: tank.id, data: { temperatureC: 26.2, pH: 8.1 } },
    ])
  })

  test('have a tenth of their water changed weekly: 10 of 100 L', () => {
    const { room, tank } = tankRoom()
    expect(room.drafts('2026-03-15', [tankWaterChange]).drafts).toEqual([])
    const draft = onlyDraft(room.drafts('2026-03-16', [tankWaterChange]))
    expect(draft.content.amount).toEqual({ value: 10, unit: 'L' })
    expect(signOff(tankWaterChange, draft).facts).toEqual([
      { kind: 'water_change', subjectId: tank.id, data: { removedL: 10, addedL: 10 } },
    ])
  })

  test('larval and storage tanks are left to their own rules', () => {
    const room = new SnapshotBuilder()
    room.tank({ kind: 'larval' })
    room.tank({ kind: 'storage' })
    expect(room.drafts(date, [tankWaterTest, tankWaterChange, tankTopUp])).toEqual({ drafts: [], gaps: [] })
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

  test('are seen to at the station of those who live in them, the room itself after all', () => {
    const room = new SnapshotBuilder()
    for (const kind of ['quarantine', 'broodstock', 'grow_out'] as const) room.tank({ name: kind, kind })
    const { drafts } = room.drafts(date, [tankWaterChange, roomEquipment])
    expect(drafts.map(({ subjectName, station }) => [subjectName, station])).toMatchObject([
      ['broodstock', 'broodstock'],
      ['grow_out', 'juveniles'],
      ['quarantine', 'quarantine'],
      [expect.any(String), 'room'],
    ])
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
})

describe('juveniles', () => {
  test('are fed by number and age: 100 fish of 0.03 g, a twentieth a day in two feeds', () => {
    const room = new SnapshotBuilder()
    const group = room.group({ settledOn: date, number: 100 })
    const { drafts } = room.drafts(date, [juvenileFeed])
    // 100 x 0.03 g x 0.05 / 2 = 0.075 g, which a scale shows as 0.1 g.
    expect(drafts.map(({ content }) => content.amount)).toEqual([0, 1].map(() => ({ value: 0.1, unit: 'g' })))
    expect(signOff(juvenileFeed, drafts[0]!).facts).toEqual([
      { kind: 'feeding', subjectId: group.id, data: { food: 'dry', amountG: 0.1 } },
    ])
    room.fact('loss', group.id, '2026-03-10T10:00:00.000Z', { number: 60, of: 'juveniles' })
    expect(saidTitle(room.drafts(date, [juvenileFeed]).drafts[0])).toContain('A pinch')
  })

  test('are counted and graded every fortnight, and a crowded tank is said to be', () => {
    const room = new SnapshotBuilder()
    const tank = room.tank({ kind: 'grow_out', volumeL: 100 })
    const group = room.group({ settledOn: '2026-02-24', number: 80, tankId: tank.id })
    expect(room.drafts('2026-03-09', [juvenileCount]).drafts).toEqual([])
    const draft = onlyDraft(room.drafts(date, [juvenileCount]))
    // 0.5 a litre in 100 L is 50.
    expect(draft.content.steps.find(({ quantities }) => quantities.most)?.quantities.most?.value).toBe(50)
    expect(signOff(juvenileCount, draft, { number: 78 }).facts).toEqual([
      { kind: 'count', subjectId: group.id, data: { of: 'juveniles', animals: [78] } },
    ])
  })
})

describe('quarantine', () => {
  test('is watched daily, last of all, with the cautions for hands and medicines', () => {
    const room = new SnapshotBuilder()
    const tank = room.tank({ name: 'Q1', kind: 'quarantine', volumeL: 40 })
    const draft = onlyDraft(room.drafts(date, [quarantineWatch]))
    expect([draft.roundId, draft.station]).toEqual(['evening', 'quarantine'])
    expect(draft.content.cautions.join(' ')).toMatch(/Mycobacterium marinum.*as a veterinarian has prescribed/)
    const typed = { signs: ['gasping'], dead: 1, note: 'bath as prescribed' }
    const [fact, loss] = signOff(quarantineWatch, draft, typed).facts
    expect(fact).toEqual({
      kind: 'observation',
      subjectId: tank.id,
      data: { signs: ['gasping'], note: 'bath as prescribed' },
    })
    expect(loss).toEqual({ kind: 'loss', subjectId: tank.id, data: { number: 1, of: 'adults' } })
    const young = signOff(quarantineWatch, draft, { dead: 2, deadOf: 'juveniles' }).facts[1]
    expect(young?.data).toEqual({ number: 2, of: 'juveniles' })
    room.append(fact!, { at: '2026-03-10T18:50:00.000Z' })
    expect(room.drafts(date, [quarantineWatch]).drafts).toEqual([])
    expect(signOff(quarantineWatch, draft).facts).toEqual([
      { kind: 'observation', subjectId: tank.id, data: { signs: ['all_well'], note: '' } },
    ])
    const given = { product: 'as on the bottle', dose: '1 mL in 10 L', prescribedBy: 'Dr Reis' }
    expect(signOff(quarantineWatch, draft, given).facts[1]).toEqual({
      kind: 'treatment',
      subjectId: tank.id,
      data: given,
    })
    expect(signOff(quarantineWatch, draft, { product: 'as on the bottle' }).facts[1]).toMatchObject({
      data: { note: 'Treatment, not complete: as on the bottle' },
    })
  })
})
