import { expect, test } from 'vitest'
import { filtersOf } from './filters.ts'

test('a topic below another is heard by it, and one that only begins alike is not', () => {
  expect(filtersOf(['home', 'home/rack', 'homes', 'shelf/2'])).toEqual(['home/#', 'homes/#', 'shelf/2/#'])
  expect(filtersOf([])).toEqual([])
})
