import { describe, expect, test } from 'vitest'
import { electricityCautions, fishWaterCautions } from '../../task/cautions.ts'
import { saidSteps } from '../../testing/said-steps.ts'
import { saidTitle } from '../../testing/said-title.ts'
import { onlyDraft, SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { whyLines } from '../../testing/why-lines.ts'
import { tankWaterAct } from './tank-water-act.ts'
import { tankWaterChange } from './tank-water-change.ts'
import { tankWaterTest } from './tank-water-test.ts'

const date = '2026-03-12'

/** A pair's tank of 100 L at 35 and 26 °C with a filter, whose water was changed and tested on the 9th. */
function tankRoom() {
  const room = new SnapshotBuilder()
  const about = { kind: 'broodstock', volumeL: 100, salinity: 35, temperatureC: 26, hasFilter: true } as const
  const tank = room.tank({ name: 'T', ...about })
  room.pair({ tankId: tank.id })
  room.fact('water_change', tank.id, '2026-03-09T12:30:00.000Z', { removedL: 10, addedL: 10 })
  room.fact('water_test', tank.id, '2026-03-09T12:00:00.000Z', { temperatureC: 26 })
  const read = (at: string, values: object) => room.fact('water_test', tank.id, at, { temperatureC: 26, ...values })
  const acts = (on = date) => room.drafts(on, [tankWaterAct]).drafts
  return { room, tank, read, acts }
}

describe('water that is harmful', () => {
  test('is changed in the round in which it was read, late after an hour, and says how it was worked out', () => {
    const { read, acts } = tankRoom()
    read(`${date}T12:40:00.000Z`, { totalAmmoniaNMgPerL: 1, pH: 8.2 })
    const [draft] = acts()
    expect(draft).toMatchObject({ roundId: 'midday', dueAt: `${date}T12:30:00.000Z`, lateAt: `${date}T13:30:00.000Z` })
    const why = whyLines(draft)
    expect(why[0]).toBe('1 mg_per_L total ammonia (as N)')
    expect(why[1]).toBe('and 8.2 pH read in the water')
    // At 26 C, pH 8.2 and 35 some 7 % of it is NH3.
    expect(why[2]).toMatch(/^equals 0\.07\d? mg_per_L un-ionised, NH3-N$/)
    expect(why.slice(3)).toEqual([
      'and 0.04 mg_per_L NH3-N from which to act',
      // 0.07 to 0.02 would take 0.72: no more than half goes in one change.
      'equals 0.5 share to change',
      expect.stringMatching(/^and 0\.5 share /),
      'times 100 L in T',
    ])
    expect(draft?.content.cautions).toEqual(fishWaterCautions)
    expect(saidSteps(draft)).toEqual([
      'New water at 35 psu and 26 degC, measured, within 1 of both.',
      expect.stringMatching(/^More air at once/),
      expect.stringMatching(/^Look for the cause/),
      expect.stringMatching(/^It is tested again in the next round/),
    ])
  })

  test('is changed to half of what one acts on where a smaller change does: 14 mg/L of nitrite, to 5', () => {
    const { room, read, acts } = tankRoom()
    room.setting('tank-water-act', { parameters: { mostShare: 0.8 } })
    read(`${date}T07:10:00.000Z`, { nitriteNMgPerL: 14 })
    const [draft] = acts()
    // 1 - 5 / 14 is 0.643 of 100 L.
    expect(draft?.content.amount).toEqual({ value: 64.3, unit: 'L' })
    expect(whyLines(draft)).toEqual([
      ...['14 mg_per_L nitrite (as N)', 'and 10 mg_per_L nitrite (N) from which to act', 'equals 0.64 share to change'],
      ...[expect.stringMatching(/^and 0\.8 share /), 'times 100 L in T'],
    ])
  })

  test('is acted on until the day after it was read, with the first round; later it is tested anew', () => {
    const { room, tank, read, acts } = tankRoom()
    read('2026-03-12T20:00:00.000Z', { nitriteNMgPerL: 12 })
    expect(acts('2026-03-13')).toMatchObject([{ roundId: 'morning', dueAt: '2026-03-13T07:00:00.000Z' }])
    expect(acts('2026-03-14')).toEqual([])
    // Fresh water to the mark takes nothing out.
    room.fact('water_change', tank.id, '2026-03-12T20:30:00.000Z', { removedL: 0, addedL: 2, salinity: 0 })
    expect(acts('2026-03-13')).toHaveLength(1)
    room.fact('water_change', tank.id, '2026-03-12T21:00:00.000Z', { removedL: 20, addedL: 20 })
    expect(acts('2026-03-13')).toEqual([])
  })

  test('says what the week’s change has already taken out of it', () => {
    const { room, tank, read, acts } = tankRoom()
    read(`${date}T07:10:00.000Z`, { nitriteNMgPerL: 20 })
    room.fact('water_change', tank.id, `${date}T07:10:00.000Z`, { removedL: 30, addedL: 30 })
    // 14 of 20 are left.
    expect(whyLines(acts()[0]).slice(0, 2)).toEqual(['20 mg_per_L nitrite (as N)', 'and water changed since'])
  })

  test('is left to the rules of larvae where larvae swim', () => {
    const { room, tank, read, acts } = tankRoom()
    read(`${date}T07:10:00.000Z`, { nitriteNMgPerL: 12 })
    expect(acts()).toHaveLength(1)
    room.batch({ hatchedOn: '2026-03-08', tankId: tank.id })
    expect(acts()).toEqual([])
  })

  test('that was changed is written down as changed, with what the new water measured', () => {
    const { tank, read, acts } = tankRoom()
    read(`${date}T07:10:00.000Z`, { nitriteNMgPerL: 12 })
    const kept = (values: Record<string, unknown>) => signOff(tankWaterAct, acts()[0]!, values).facts
    const change = (data: object) => [{ kind: 'water_change', subjectId: tank.id, data }]
    expect(kept({})).toEqual(change({ removedL: 50, addedL: 50 }))
    expect(kept({ amountL: 40, salinity: 34.5, temperatureC: 25.5 })).toEqual(
      change({ removedL: 40, addedL: 40, salinity: 34.5, temperatureC: 25.5 }),
    )
  })
})

describe('the week’s change', () => {
  test('is made at midday and says by what share, whether a filter runs, and what went in last', () => {
    const { room, tank } = tankRoom()
    const asked = () => onlyDraft(room.drafts('2026-03-16', [tankWaterTest, tankWaterChange]))
    expect([asked().roundId, asked().content.verb]).toEqual(['midday', 'change_water'])
    expect(whyLines(asked())).toEqual([
      ...['100 L in T', 'and filter runs', 'times 0.1 share of the water', 'equals 10 L to change'],
      ...['and 7 days from one change to the next', 'and last water in'],
    ])
    expect(asked().content.cautions).toEqual(electricityCautions)
    tank.hasFilter = false
    expect(whyLines(asked()).slice(1, 3)).toEqual([
      'and filter none',
      'times 0.5 share of the water where no filter runs',
    ])
    room.snapshot.facts = []
    expect(whyLines(asked()).at(-1)).toBe('and 7 days from one change to the next')
  })

  test('alone asks what was changed and what the new water measured; with its test, what the old one did too', () => {
    const { room } = tankRoom()
    const names = () =>
      onlyDraft(room.drafts('2026-03-16', [tankWaterChange])).content.fields.map(({ name, isRequired }) =>
        isRequired ? `${name}!` : name,
      )
    expect(names()).toEqual([
      ...['temperatureC!', 'salinity', 'pH', 'totalAmmoniaNMgPerL', 'nitriteNMgPerL', 'nitrateNMgPerL'],
      ...['amountL', 'newSalinity'],
    ])
    expect(saidSteps(room.drafts('2026-03-16', [tankWaterChange]).drafts[0])[0]).toMatch(/^Before feeding/)
    room.setting('tank-water-test', { isOn: false })
    expect(names()).toEqual(['amountL', 'salinity', 'temperatureC'])
    const [draft] = room.drafts('2026-03-16', [tankWaterChange]).drafts
    expect(saidTitle(draft)).toBe('10 L new water')
    expect(saidSteps(draft)).toEqual([
      'New water at 35 psu and 26 degC, measured, within 1 of both.',
      expect.stringMatching(/^Heater and pump off/),
      expect.stringMatching(/^Quarantine last/),
    ])
  })

  test('of before a change took its test along is signed off as the change alone', () => {
    const { room, tank } = tankRoom()
    const draft = onlyDraft(room.drafts('2026-03-16', [tankWaterChange]))
    const before = { ...draft, context: { tankId: tank.id, plannedL: 10 } }
    expect(signOff(tankWaterChange, before, { temperatureC: 25, salinity: 34 }).facts).toEqual([
      { kind: 'water_change', subjectId: tank.id, data: { removedL: 10, addedL: 10, temperatureC: 25, salinity: 34 } },
    ])
  })
})

describe('the week’s test', () => {
  test('is made at midday with gloves on, by the last test, or because there was none', () => {
    const { room } = tankRoom()
    room.setting('tank-water-change', { isOn: false })
    const asked = (on = '2026-03-16') => onlyDraft(room.drafts(on, [tankWaterTest]))
    expect([asked().roundId, saidTitle(asked())]).toEqual(['midday', 'Test the water'])
    expect(asked().content.cautions).toEqual(fishWaterCautions)
    expect(whyLines(asked())).toEqual(['last tested', 'and 7 days from one test to the next'])
    room.snapshot.facts = []
    expect(whyLines(asked())[0]).toBe('tests so far none')
  })

  test('is made again in the round after a change against what was read, and says so', () => {
    const { room, tank, read } = tankRoom()
    read(`${date}T07:10:00.000Z`, { nitriteNMgPerL: 12 })
    room.fact('water_change', tank.id, `${date}T07:40:00.000Z`, { removedL: 50, addedL: 50 })
    const draft = onlyDraft(room.drafts(date, [tankWaterTest]))
    expect([draft.roundId, saidTitle(draft)]).toEqual(['midday', 'Test ammonia and nitrite again'])
    expect(whyLines(draft)).toEqual([
      ...['last tested', 'and water changed against it', 'and 7 days from one test to the next'],
    ])
    // Where nothing was changed it is tested the next morning.
    const other = tankRoom()
    other.read(`${date}T07:10:00.000Z`, { nitriteNMgPerL: 2 })
    const morning = onlyDraft(other.room.drafts('2026-03-13', [tankWaterTest]))
    expect([morning.roundId, whyLines(morning).length]).toEqual(['morning', 2])
  })

  test('comes with the week’s change on its day, unless something has to be tested again', () => {
    const { room, read } = tankRoom()
    expect(room.drafts('2026-03-16', [tankWaterTest]).drafts).toEqual([])
    read('2026-03-15T07:10:00.000Z', { nitriteNMgPerL: 2 })
    expect(onlyDraft(room.drafts('2026-03-16', [tankWaterTest])).roundId).toBe('morning')
  })
})
