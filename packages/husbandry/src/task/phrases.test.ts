import type { Because } from '@fryward/shared'
import { describe, expect, test } from 'vitest'
import { feedsADayLink } from './feeds-a-day.ts'
import * as measures from './measures.ts'
import { likelihoodText, phrase, taskContent } from './phrases.ts'
import { also, destinationsOf, titled, whichFeed } from './titles.ts'

const link = (label: string, joins: Because['joins']): Because => ({
  ...{ label, quantity: null, text: null, joins },
  origin: { kind: 'setting', subjectId: null, where: 'test' },
})

describe('a task', () => {
  test('has nothing but what it was given, and its first reason joins none', () => {
    expect(phrase('Swirl it.')).toEqual({ text: 'Swirl it.', quantities: {} })
    expect(phrase('Add {dose}.', { dose: measures.mL(3) })).toEqual({
      ...{ text: 'Add {dose}.', quantities: { dose: { value: 3, unit: 'mL' } } },
    })
    const title = titled('swirl')
    expect(title).toEqual({ deed: 'swirl', amount: null, thing: null, from: null, to: [], details: [] })
    const empty = { amount: null, amountOf: null, steps: [], cautions: [], fields: [], because: [] }
    expect(taskContent({ verb: 'check', title })).toEqual({ verb: 'check', title, ...empty })
    const because = [link('density', 'times'), link('litres', 'times'), link('feeds', 'divided_by')]
    expect(taskContent({ verb: 'check', title, because }).because.map(({ joins }) => joins)).toEqual([
      ...[null, 'times', 'divided_by'],
    ])
  })

  test('says which of the feeds of the day it is, where there are several', () => {
    expect([whichFeed(0, 1), whichFeed(0, 2), whichFeed(2, 3)]).toEqual([
      ...[[], [{ kind: 'feed', number: 1, of: 2 }], [{ kind: 'feed', number: 3, of: 3 }]],
    ])
    expect(also('walls brushed')).toEqual({ kind: 'with', words: 'walls brushed' })
  })

  test('says where each part goes: to a vessel by its name, else which way', () => {
    const ways = ['other_fish', 'chilled_reserve', 'drain'].map((to) => ({ to, name: 'unread' }))
    expect(destinationsOf([{ to: 'culture', name: 'R2' }, { to: 'larval_batch', name: 'L1' }, ...ways])).toEqual([
      ...[{ name: 'R2' }, { name: 'L1' }, { way: 'other_fish' }, { way: 'chilled_reserve' }, { way: 'drain' }],
    ])
  })
})

test('a ration is divided as the rule says, or by the rounds that the room has', () => {
  const parameter = link('feeds a day', 'divided_by')
  expect(feedsADayLink({ feeds: 3, wanted: 3, parameter })).toBe(parameter)
  expect(feedsADayLink({ feeds: 2, wanted: 3, parameter })).toEqual({
    ...{ label: 'that the rounds allow', quantity: { value: 2, unit: 'feeds' }, text: null, joins: 'divided_by' },
    origin: { kind: 'setting', subjectId: null, where: 'rounds of the room' },
  })
})

test('a chance is told in words, each from its own on, and in per cent', () => {
  // From memory: words of chance as they are read, about Kent 1964, Words of Estimative Probability: 93, 75, 50 and 7 %.
  expect([0.93, 0.75, 0.3, 0.07].map(likelihoodText)).toEqual([
    ...['almost certain (93%)', 'likely (75%)', 'possible (30%)', 'unlikely (7%)'],
  ])
  const wordAt = (chance: number) => likelihoodText(chance).replace(/ \(.*/, '')
  expect([0.85, 0.849, 0.5, 0.499, 0.2, 0.199].map(wordAt)).toEqual([
    ...['almost certain', 'likely', 'likely', 'possible', 'possible', 'unlikely'],
  ])
})

test('each amount is told in its own unit', () => {
  const { mL, litres, grams, perMl, animals, feeds, share, days, hours, degC, psu } = measures
  const told = [mL, litres, grams, perMl, animals, feeds, share, days, hours, degC, psu].map((of) => of(7))
  expect(told.map(({ unit }) => unit)).toEqual([
    ...['mL', 'L', 'g', 'per_mL', 'animals', 'feeds', 'share', 'days', 'hours', 'degC', 'psu'],
  ])
  expect(told.every(({ value }) => value === 7)).toBe(true)
})
