import type { Fact, Rule, RuleParameter } from '@fryward/shared'
import { describe, expect, it } from 'vitest'
import { heldBand, readPrey } from './prey-chart.ts'

const base = (id: string, at: string) => ({
  ...{ id, subjectId: 'batch', subjectKind: 'larval_batch' as const, at, receivedAt: at, recordedByName: 'Carla' },
  ...{ taskId: null, struckAt: null, struckByName: null, struckReason: null, revision: 1 },
})
const count: Fact = {
  ...base('count', '2026-11-25T07:00:00.000Z'),
  kind: 'count',
  data: { of: 'prey_rotifers', animals: [50, 60, 70], volumeMl: 10, dilution: 1 },
}
const larvae: Fact = {
  ...base('larvae', '2026-11-25T07:00:00.000Z'),
  kind: 'count',
  data: { of: 'larvae', animals: [200], dilution: 1 },
}
const fed = (food: 'rotifers' | 'concentrate'): Fact => ({
  ...base(food, '2026-11-25T08:00:00.000Z'),
  kind: 'feeding',
  data: { food },
})
const parameter = (name: string, value: number): RuleParameter => ({
  ...{ name, label: name, type: 'number', unit: 'per_mL', minimum: 0, maximum: 60, choices: null },
  ...{ default: value, value, source: { kind: 'common_practice', citation: 'x' } },
})
const rule: Rule = {
  ...{ id: 'larval-prey-top-up', title: '', sentence: '', subject: 'larval_batch', station: 'larvae', isOn: true },
  ...{ isOnByDefault: true, changedByName: null, changedAt: null, version: 0 },
  parameters: [parameter('refillUnderPerMl', 5), parameter('targetPerMl', 10), parameter('mostPerMl', 15)],
}

describe('prey in the water', () => {
  it('is each count with the span of its samples, and each feed of live prey', () => {
    const read = readPrey([fed('concentrate'), fed('rotifers'), larvae, count], '2026-11-22T00:00:00.000Z')
    expect(read.counts).toMatchObject([{ factId: 'count', perMl: 6, lowestPerMl: 5, highestPerMl: 7, samples: 3 }])
    expect(read.feeds.map((feed) => feed.factId)).toEqual(['rotifers'])
  })

  it('leaves out what was struck and what came before', () => {
    const struck: Fact = { ...count, struckAt: '2026-11-25T09:00:00.000Z' }
    expect(readPrey([struck], '2026-11-22T00:00:00.000Z').counts).toEqual([])
    expect(readPrey([count], '2026-11-25T07:30:00.000Z').counts).toEqual([])
  })

  it('is held between what the room’s own rule says, and unheld where that rule is off', () => {
    expect(heldBand([rule])).toEqual({ lowest: 5, target: 10, most: 15 })
    expect(heldBand([{ ...rule, isOn: false }])).toBeUndefined()
    expect(heldBand([])).toBeUndefined()
  })
})
