import type { RuleParameter } from '@fryward/shared'
import { expect, test } from 'vitest'
import { rulePieces } from './rule-pieces.ts'

const parameter = (name: string, unit: RuleParameter['unit']): RuleParameter => ({
  ...{ name, label: name, type: 'number', unit, minimum: 0, maximum: 10, choices: null, default: 1, value: 1 },
  source: { kind: 'from_memory', citation: 'none' },
})
const said = (sentence: string, ...parameters: RuleParameter[]) =>
  rulePieces({ sentence, parameters }, 'us').map((piece) =>
    typeof piece === 'string' ? piece : `<${piece.parameter.name} ${piece.unit}>`,
  )

test('a rule’s sentence says a parameter’s unit once, in the room’s units', () => {
  expect(said('Feed {share} every {n} days.', parameter('share', 'share'), parameter('n', 'days'))).toEqual([
    ...['Feed ', '<share %>', ' every ', '<n >', ' days.'],
  ])
  expect(said('From day {n} on take {v}', parameter('n', 'days'), parameter('v', 'L'))).toEqual([
    ...['From day ', '<n >', ' on take ', '<v gal>'],
  ])
  expect(said('No more than {fish} fish a litre', parameter('fish', 'per_L'))).toEqual([
    ...['No more than ', '<fish >', ' fish a litre'],
  ])
})
