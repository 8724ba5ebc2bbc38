import { expect, test } from 'vitest'
import { SnapshotBuilder } from '../testing/snapshot-builder.ts'
import { rules } from './index.ts'

const date = '2026-03-10'
const ofCultures = rules.filter(({ subject }) => subject === 'culture')

/** Rules that ask something of a culture that has every trouble there is, and all that wears out. */
function askedOf(kind: 'rotifer' | 'copepod' | 'microalgae' | 'artemia_hatch'): string[] {
  const room = new SnapshotBuilder()
  const { id: concentrateId } = room.concentrate()
  for (const rule of ofCultures) if (!rule.isOnByDefault) room.setting(rule.id, { isOn: true })
  const fits = kind === 'rotifer' ? {} : { strain: null }
  const more = { ...{ kind, hasFilter: true, concentrateId, shelf: 'top', tools: 'blue', airLine: 'A' }, ...fits }
  const culture = room.culture({ startedAt: '2026-01-01T08:00:00.000Z', ...more })
  room.culture({ startedAt: '2026-01-01T08:00:00.000Z', isBackup: true, ...more })
  for (const [day, perMl] of [300, 200, 10].entries())
    room.count(culture, `2026-03-0${7 + day}T07:00:00.000Z`, [perMl, perMl, perMl], { eggs: 1, females: 60 })
  const parts = [{ to: 'chilled_reserve' as const, volumeL: 2 }]
  room.fact('harvest', culture.id, '2026-02-10T07:00:00.000Z', { volumeL: 2, parts })
  room.fact('harvest', culture.id, '2026-03-09T08:00:00.000Z', { volumeL: 2, parts: [{ to: 'drain', volumeL: 2 }] })
  room.fact('observation', culture.id, '2026-03-09T18:30:00.000Z', { signs: ['bad_smell', 'swimming_slow'] })
  room.fact('observation', culture.id, '2026-03-10T06:30:00.000Z', { signs: ['bad_smell', 'swimming_slow'] })
  room.fact('water_test', culture.id, '2026-03-09T18:30:00.000Z', { totalAmmoniaNMgPerL: 9, pH: 8.2 })
  return [...new Set(room.drafts(date, ofCultures).drafts.map(({ ruleId }) => ruleId))].sort()
}

// Copepods through a rotifer’s sieve, or a brush for rotifers in a bottle of algae, are lost cultures.
test('a culture is asked for nothing that is another kind’s, whatever is wrong with it', () => {
  const rotifer = askedOf('rotifer')
  expect(rotifer.length).toBeGreaterThan(9)
  expect(rotifer.filter((id) => !/^rotifer-|^culture-water-test$|^chilled-reserve$/.test(id))).toEqual([])
  for (const [kind, own] of [
    ['copepod', /^copepod-/],
    ['microalgae', /^microalgae-/],
    ['artemia_hatch', /^artemia-/],
  ] as const) {
    const asked = askedOf(kind)
    expect(asked.length, kind).toBeGreaterThan(0)
    expect(asked.filter((id) => !own.test(id))).toEqual([])
  }
})
