import { type Rule, RuleSchema } from '@fryward/shared'
import { describe, expect, it } from 'vitest'
import { findRules } from './find-rules.ts'

const ruleOf = (id: string, title: string, citation: string): Rule =>
  RuleSchema.parse({
    id,
    title,
    sentence: `${title} every {everyDays} days.`,
    subject: 'culture',
    station: 'live_food',
    isOn: true,
    isOnByDefault: true,
    parameters: [
      {
        name: 'everyDays',
        label: 'from one time to the next',
        type: 'number',
        unit: 'days',
        minimum: 1,
        maximum: 60,
        choices: null,
        default: 1,
        value: 1,
        source: { kind: 'published', citation },
      },
    ],
    changedByName: null,
    changedAt: null,
    version: 0,
  })
const rules = [ruleOf('rotifer-feed', 'Feed the rotifers', 'Ana (2001)'), ruleOf('pair-feed', 'Feed the pairs', '')]
const found = (typed: string) => findRules(rules, typed).map((rule) => rule.id)

describe('finding a rule', () => {
  it('takes all words, in any order and case', () => {
    expect(found('ROTIFERS feed')).toEqual(['rotifer-feed'])
    expect(found('feed')).toEqual(['rotifer-feed', 'pair-feed'])
    expect(found('feed whales')).toEqual([])
  })

  it('looks into the sources too', () => {
    expect(found('2001')).toEqual(['rotifer-feed'])
  })

  it('takes a word by its beginning, not by what is inside another', () => {
    expect(found('rot')).toEqual(['rotifer-feed'])
    expect(found('otifers')).toEqual([])
  })

  it('shows all while nothing is typed', () => {
    expect(found('  ')).toEqual(['rotifer-feed', 'pair-feed'])
  })
})
