import type { Mark } from '@fryward/shared'
import { expect, test } from 'vitest'
import { markGroups } from './mark-groups.ts'

const mark = (kind: Mark['kind'], at: string): Mark => ({
  ...{ kind, at, subject: { id: 'a', kind: 'tank', name: 'L1' }, alarm: null },
})

test('marks on one spot are one sign, of what matters most; others stand apart', () => {
  const marks = [mark('harvest', '0'), mark('alarm', '10'), mark('water_change', '14'), mark('harvest', '40')]
  const groups = markGroups(marks, Number)
  expect(groups.map(({ x, kind, marks: some }) => [x, kind, some.length])).toEqual([
    [0, 'alarm', 3],
    [40, 'harvest', 1],
  ])
})
