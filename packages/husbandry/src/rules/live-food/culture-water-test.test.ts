import { expect, test } from 'vitest'
import { saidTitle } from '../../testing/said-title.ts'
import { onlyDraft, SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { cultureWaterTest } from './culture-water-test.ts'
import { rotiferFeed } from './rotifer-feed.ts'
import { rotiferTrouble } from './rotifer-trouble.ts'

test('a culture’s water is tested weekly; 1 mg/L of NH3 is trouble with what to do, and tested again once changed', () => {
  const room = new SnapshotBuilder()
  const culture = room.culture({ startedAt: '2026-03-01T08:00:00.000Z', salinity: 25, temperatureC: 25 })
  const tested = (at: string, values: Record<string, unknown>) => {
    const draft = onlyDraft(room.drafts(at.slice(0, 10), [cultureWaterTest]))
    for (const fact of signOff(cultureWaterTest, draft, values).facts) room.append(fact, { at })
    return draft.roundId
  }
  expect(tested('2026-03-03T12:40:00.000Z', { totalAmmoniaNMgPerL: 5, pH: 7.5, oxygenMgPerL: 6 })).toBe('midday')
  // At pH 7.5 some 1.6 % of 5 mg/L is un-ionised: 0.1 mg/L NH3, far from the 1 mg/L of FAO 361 (R31).
  expect(room.drafts('2026-03-03', [rotiferTrouble]).drafts).toEqual([])
  expect(room.drafts('2026-03-09', [cultureWaterTest]).drafts).toEqual([])
  tested('2026-03-10T12:40:00.000Z', { totalAmmoniaNMgPerL: 18, pH: 8.3, oxygenMgPerL: 1.8 })
  const trouble = onlyDraft(room.drafts('2026-03-10', [rotiferTrouble]))
  expect(saidTitle(trouble)).toBe('See to it: ammonia is high, oxygen is low')
  const steps = trouble.content.steps.map(({ text }) => text).join(' ')
  expect(steps).toMatch(/Change half of the water.*More air at once/)
  expect(onlyDraft(room.drafts('2026-03-11', [cultureWaterTest])).roundId).toBe('morning')
  // Looked at and nothing changed, it stays as it is.
  expect(signOff(rotiferTrouble, trouble, { did: 'nothing' }).facts.map(({ kind }) => kind)).toEqual(['observation'])
  const { facts } = signOff(rotiferTrouble, trouble, { did: 'thinned' })
  expect(facts[1]).toEqual({ kind: 'water_change', subjectId: culture.id, data: { removedL: 9, addedL: 9 } })
  expect(signOff(rotiferTrouble, trouble, { amountL: 6 }).facts[1]).toMatchObject({ data: { removedL: 6 } })
  for (const fact of facts) room.append(fact, { at: '2026-03-10T13:30:00.000Z' })
  expect(room.drafts('2026-03-10', [rotiferTrouble]).drafts).toEqual([])
  expect(tested('2026-03-10T18:40:00.000Z', { totalAmmoniaNMgPerL: 6, pH: 7.8, oxygenMgPerL: 5 })).toBe('evening')
  expect(room.drafts('2026-03-11', [cultureWaterTest]).drafts).toEqual([])
})

test('a culture whose water was found wrong is fed by halves until a test finds it sound', () => {
  const room = new SnapshotBuilder()
  const bottle = room.concentrate()
  const culture = room.culture({ startedAt: '2026-03-01T08:00:00.000Z', concentrateId: bottle.id })
  room.count(culture, '2026-03-10T06:30:00.000Z', [240, 240, 240])
  const given = () => room.drafts('2026-03-10', [rotiferFeed]).drafts.at(-1)?.content.amount?.value ?? Number.NaN
  const full = given()
  room.fact('water_test', culture.id, '2026-03-10T06:40:00.000Z', { totalAmmoniaNMgPerL: 18, pH: 8.3 })
  expect(given() / full).toBeCloseTo(0.5, 1)
  room.fact('water_test', culture.id, '2026-03-10T12:40:00.000Z', { totalAmmoniaNMgPerL: 2, pH: 7.8 })
  expect(given()).toBe(full)
})
