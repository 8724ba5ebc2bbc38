import { expect, test } from 'vitest'
import { choiceOf, choicesOf, countOf, given, isYes, numberOf, partsOf, textOf } from './values.ts'

const left = [undefined, null, '']

test('a value is read as what its field is, and left empty it is none', () => {
  expect([numberOf({ n: 0 }, 'n'), numberOf({ n: 2.5 }, 'n'), numberOf({ n: '2.5' }, 'n')]).toEqual([0, 2.5, undefined])
  expect([textOf({ t: ' ' }, 't'), textOf({ t: 'dim' }, 't'), textOf({ t: 3 }, 't')]).toEqual([' ', 'dim', undefined])
  for (const empty of left) {
    expect([numberOf({ v: empty }, 'v'), textOf({ v: empty }, 'v')]).toEqual([undefined, undefined])
    expect([isYes({ v: empty }, 'v'), choiceOf({ v: empty }, 'v', ['a']), choicesOf({ v: empty }, 'v', ['a'])]).toEqual(
      [...[false, undefined, []]],
    )
  }
  expect([isYes({ yes: true }, 'yes'), isYes({ yes: false }, 'yes'), isYes({ yes: 'yes' }, 'yes')]).toEqual([
    ...[true, false, false],
  ])
})

test('choices are of those that the field gave, in the order in which it gave them', () => {
  const allowed = ['clear', 'cloudy', 'foam'] as const
  expect([choiceOf({ look: 'foam' }, 'look', allowed), choiceOf({ look: 'red' }, 'look', allowed)]).toEqual([
    ...['foam', undefined],
  ])
  expect(choicesOf({ look: ['foam', 'red', 'clear'] }, 'look', allowed)).toEqual(['clear', 'foam'])
  // One word is no list, though it holds the other.
  expect(choicesOf({ look: 'foam' }, 'look', allowed)).toEqual([])
})

test('a count and the parts of a harvest are what the contract says they are', () => {
  expect([countOf({}, 'count'), partsOf({}, 'parts')]).toEqual([undefined, undefined])
  expect(countOf({ count: { animals: [20], volumeMl: 1 } }, 'count')).toEqual({
    animals: [20],
    volumeMl: 1,
    dilution: 1,
  })
  expect(() => countOf({ count: { animals: [] } }, 'count')).toThrow()
  const drain = { to: 'drain', volumeL: 2 }
  expect(partsOf({ parts: [drain, drain] }, 'parts')).toEqual([drain, drain])
  expect(() => partsOf({ parts: drain }, 'parts')).toThrow()
})

test('a fact says only what somebody said: nought, no and nothing in words are said', () => {
  expect(given({ deaths: 0, eggs: false, note: '', left: undefined, litres: null })).toEqual({
    ...{ deaths: 0, eggs: false, note: '', litres: null },
  })
})
