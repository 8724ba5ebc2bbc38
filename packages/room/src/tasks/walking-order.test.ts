import { expect, test } from 'vitest'
import { inWalkingOrder } from './walking-order.ts'

const morning = new Date('2026-03-10T07:00:00.000Z')
const evening = new Date('2026-03-10T18:30:00.000Z')

test('what came onto the list later stands where a round does it, and what is due later behind it', () => {
  const list = [
    { id: '1', ruleId: 'rotifer-count', dueAt: morning },
    { id: '2', ruleId: 'rotifer-feed', dueAt: morning },
    { id: '3', ruleId: 'rotifer-feed', dueAt: evening },
    { id: '4', ruleId: 'rotifer-harvest', dueAt: morning },
    { id: '5', ruleId: 'rotifer-recount', dueAt: morning },
    { id: '6', ruleId: 'a rule of long ago', dueAt: morning },
    { id: '7', ruleId: 'rotifer-feed', dueAt: morning },
  ]
  const ids = list.sort(inWalkingOrder).map(({ id }) => id)
  expect(ids).toEqual(['1', '5', '4', '2', '7', '6', '3'])
})
