import type { CareKind, Fact, FactOf } from '@fryward/shared'
import { expect, test } from 'vitest'
import { sayFactKind } from '../labels/facts.ts'
import type { UnitVoice } from '../voice.ts'
import { sayFact } from './say-fact.ts'

const id = '01900000-0000-7000-8000-000000000001'
const british: UnitVoice = { units: 'metric', locale: 'en-GB' }
const nameOf = (known: string | undefined) => (known === id ? 'R1' : undefined)
const say = (fact: Pick<Fact, 'kind' | 'data'>, voice = british, care?: CareKind) =>
  sayFact({ ...fact, id, subjectId: id } as Fact, { voice, nameOf, care })

test('a count says its density, and apart from it the samples that it was worked out from', () => {
  const data: FactOf<'count'>['data'] = {
    ...{ of: 'culture', animals: [34, 36, 32], volumeMl: 1, dilution: 10, eggs: 12, females: 30 },
  }
  expect(say({ kind: 'count', data })).toEqual({
    main: '340 per mL, 0.4 eggs a female (12 on 30)',
    detail: 'counted 34, 36, 32 in 1 mL, diluted 10 times',
  })
})

test('a harvest says where each part went, by name where it has one, in the room’s units', () => {
  const data: FactOf<'harvest'>['data'] = {
    volumeL: 2.5,
    parts: [
      { to: 'larval_batch', subjectId: id, volumeL: 2 },
      { to: 'drain', volumeL: 0.5 },
    ],
  }
  const harvest = { kind: 'harvest', data } as const
  expect(say(harvest).main).toBe('2.5 L taken: 2 L to R1, 500 mL to the drain')
  expect(say(harvest, { units: 'metric', locale: 'de-DE' }).main).toBe('2,5 L taken: 2 L to R1, 500 mL to the drain')
  // NIST Special Publication 811, appendix B: a US liquid quart is 0.946 352 9 L.
  expect(say(harvest, { units: 'us', locale: 'en-US' }).main).toBe('2.64 qt taken: 2.11 qt to R1, 500 mL to the drain')
})

test('a hatch says its night as people say a date', () => {
  expect(say({ kind: 'hatch', data: { hatchedOn: '2026-11-26', larvae: 1200, share: 0.75 } }).main).toBe(
    '1,200 larvae, 75% of the clutch, night of Thu 26 Nov',
  )
})

test('a loss counts heads by the whole number, and one of them as one', () => {
  expect(say({ kind: 'loss', data: { number: 1, of: 'larvae' } }).main).toBe('1 larva')
  expect(say({ kind: 'loss', data: { number: 12_345, of: 'eggs' } }).main).toBe('12,345 eggs')
  expect(say({ kind: 'spawning', data: { eggs: 1 } } as never).main).toBe('1 egg')
  expect(say({ kind: 'spawning', data: {} } as never).main).toBe('eggs not counted')
  expect(say({ kind: 'hatch', data: { hatchedOn: '2026-11-26', larvae: 1 } }).main).toMatch(/^1 larva\b/)
  expect(say({ kind: 'inoculation', data: { animals: 1 } }).main).toBe('1 animal')
})

test.each(['mouth', 'pouch'] as const)(
  'what is recorded of young that a %s carries speaks of neither eggs nor larvae',
  (care) => {
    const carried = (kind: Fact['kind'], data: object) => say({ kind, data } as never, british, care).main
    expect(sayFactKind('hatch', care)).toBe('Release')
    expect(carried('hatch', { hatchedOn: '2026-11-26', larvae: 40 })).toBe('40 young, night of Thu 26 Nov')
    expect(sayFactKind('spawning', care)).toBe('Brood')
    expect([carried('spawning', { eggs: 45 }), carried('spawning', {})]).toEqual(['45', 'not counted'])
    expect(carried('loss', { number: 1, of: 'larvae' })).toBe('1 young')
    expect(carried('count', { of: 'larvae', animals: [38], dilution: 1 })).toBe('38 young')
    const seen = ['eggs_seen', 'no_eggs', 'larvae_out'].map((sign) => carried('observation', { signs: [sign] }))
    expect(seen).toEqual(['still carrying', 'not carrying any more', 'young out'])
  },
)

test('fish that were placed say what they eat, and what they do not yet', () => {
  const placed = (data: object) =>
    say({ kind: 'outcome', data: { outcome: 'placed', number: 12, ...data } as never }).main
  expect(placed({ eatsDryFood: true, eatsFrozenFood: true })).toBe('12 placed, eat dry and frozen food')
  expect(placed({ eatsFrozenFood: true, eatsDryFood: false })).toBe(
    '12 placed, eat frozen food, do not eat dry food yet',
  )
  expect(placed({})).toBe('12 placed')
})
