import { expect, test } from 'vitest'
import { aboveZero, numberBetween, text, trimmedText, wholeBetween, wholeInAddress } from './shapes.ts'

const taken = (schema: { safeParse: (value: unknown) => { success: boolean } }, values: unknown[]) =>
  values.filter((value) => schema.safeParse(value).success)

test('both ends of a range are inside it, and what is no number is not', () => {
  expect(taken(numberBetween(-1, 2.5), [-1.01, -1, 0.3, 2.5, 2.51, Number.NaN, '1', null])).toEqual([-1, 0.3, 2.5])
  expect(taken(wholeBetween(1, 3), [0, 1, 1.5, 3, 4])).toEqual([1, 3])
})

test('above zero leaves zero out', () => {
  expect(taken(aboveZero(5), [-1, 0, 1e-9, 5, 5.1])).toEqual([1e-9, 5])
})

test('a whole number in an address is read from its digits', () => {
  expect(wholeInAddress(1, 200).parse('50')).toBe(50)
  expect(taken(wholeInAddress(1, 200), ['0', '1.5', '201', 'ten', ''])).toEqual([])
})

test('trimmed text is counted and kept without the spaces at its ends', () => {
  const schema = trimmedText({ shortest: 2, longest: 3, wanted: 'two letters' })
  expect(schema.parse('  abc ')).toBe('abc')
  expect(taken(schema, [' a ', 'abcd'])).toEqual([])
  expect(schema.safeParse(' a ').error?.issues[0]?.message).toBe('two letters')
})

test('other text keeps its spaces, and they count', () => {
  expect(text({ shortest: 3, longest: 4 }).parse(' a ')).toBe(' a ')
  expect(taken(text({ longest: 4 }), ['', '    ', '     '])).toEqual(['', '    '])
})
