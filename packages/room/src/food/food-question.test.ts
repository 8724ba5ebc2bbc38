import { expect, test } from 'vitest'
import { cultureAhead, eaterAhead, foodAheadOf } from '../testing/made-up-food.ts'
import { crashesOf } from './crashes-of.ts'
import { foodQuestion } from './food-question.ts'

const growth = [{ gain: 1.3, crowding: 0 }]
const future = (animals: number) => ({ animals, growth })

test('the planner is asked with each future of cultures and eaters side by side', () => {
  const cultures = [
    cultureAhead({ futures: [future(1), future(2)], growth }),
    cultureAhead({ id: 'r2', futures: [future(3), future(4)] }),
  ]
  const eaters = [
    eaterAhead('a', {
      futures: [
        [10, 20],
        [30, 40],
      ],
      fedFrom: ['r2'],
    }),
  ]
  const question = foodQuestion(foodAheadOf({ cultures, eaters, sievingLoss: 0.07 }))
  expect(question).toMatchObject({
    ...{
      days: 2,
      sievingLoss: 0.07,
      cultures: [{ id: 'r1', volumeL: 10, animals: 1e6, growth, floorAnimals: 2e5 }, { id: 'r2' }],
    },
    // The mean of its futures: 20 on the first day and 30 on the second.
    eaters: [{ id: 'a', wanted: [20, 30], fedFrom: ['r2'] }],
  })
  expect(question.futures).toEqual([
    { cultures: [future(1), future(3)], wanted: [[10, 20]] },
    { cultures: [future(2), future(4)], wanted: [[30, 40]] },
  ])
  // Whoever eats of nothing has futures all the same, and cultures nobody eats of.
  expect(foodQuestion(foodAheadOf({ eaters })).futures).toHaveLength(2)
  expect(foodQuestion(foodAheadOf({ cultures })).futures).toHaveLength(2)
  expect(foodQuestion(foodAheadOf()).futures).toEqual([])
})

test('a backup and the reserve give only where the room said so, and what is in doubt never', () => {
  const standings = ['gives', 'too_young', 'backup', 'chilled', 'in_doubt', 'falling', 'not_counted'] as const
  const usesWith = (may: { mayUseBackups?: boolean; mayUseReserve?: boolean }) =>
    foodQuestion(
      foodAheadOf({ ...may, cultures: standings.map((standing) => cultureAhead({ standing })) }),
    ).cultures.map(({ use }) => use)
  const doubtful = ['never', 'never', 'never']
  expect(usesWith({})).toEqual(['free', 'free', 'never', 'never', ...doubtful])
  expect(usesWith({ mayUseBackups: true })).toEqual(['free', 'free', 'when-short', 'never', ...doubtful])
  expect(usesWith({ mayUseReserve: true })).toEqual(['free', 'free', 'never', 'when-short', ...doubtful])
})

test('how often cultures crash here is those that were lost over the days on which any stood', () => {
  const now = '2026-03-10T12:00:00.000Z'
  const kept = (startedAt: string, endedAt: string | null = null, endCause: string | null = null) => ({
    startedAt,
    endedAt,
    endCause,
  })
  const cultures = [
    kept('2026-03-01T12:00:00.000Z'),
    kept('2026-02-01T12:00:00.000Z', '2026-02-21T18:00:00.000Z', 'crashed'),
    kept('2026-02-01T12:00:00.000Z', '2026-02-06T12:00:00.000Z', 'contaminated'),
    // Given up on purpose, and one that is to be started: none is lost, and the second has not stood.
    kept('2026-02-01T12:00:00.000Z', '2026-02-03T12:00:00.000Z', 'given_up'),
    kept('2026-03-12T12:00:00.000Z'),
  ]
  expect(crashesOf(cultures, now)).toEqual({ crashes: 2, cultureDays: 9 + 20 + 5 + 2 })
  // One that was lost on its first day stood for a day.
  expect(crashesOf([kept(now, now, 'crashed')], now)).toEqual({ crashes: 1, cultureDays: 1 })
  expect(crashesOf([], now)).toEqual({ crashes: 0, cultureDays: 0 })
})
