import { describe, expect, test } from 'vitest'
import { SnapshotBuilder } from '../testing/snapshot-builder.ts'
import { husbandryDay } from './husbandry-day.ts'
import { hoursByLight, hoursUntilDark, liveFeedRounds } from './light.ts'
import {
  afterMorning,
  firstRound,
  inTheDark,
  lastRound,
  latestRoundOf,
  roundBefore,
  roundOfInstant,
  roundsInOrder,
  spreadRounds,
} from './rounds.ts'

const date = '2026-03-10'
const at = (time: string) => `${date}T${time}:00.000Z`

/** A day of rounds at these times, lit from seven to seven where nothing else is said. */
function dayOf(times: string[], { lightsOnAt = '07:00', lightsOffAt = '19:00' } = {}) {
  const rounds = times.map((time) => ({ id: time, name: time, at: time }))
  const { room } = new SnapshotBuilder({ rounds, lightsOnAt, lightsOffAt }).snapshot
  return { room, day: husbandryDay({ room, date }) }
}
const ids = (rounds: readonly { id: string }[]) => rounds.map(({ id }) => id)

describe('the rounds of a day', () => {
  const { day } = dayOf(['18:30', '07:00', '12:30'])
  test('come in order of time, however they were written', () => {
    expect(ids(roundsInOrder(day))).toEqual(['07:00', '12:30', '18:30'])
    expect([firstRound(day).id, lastRound(day).id]).toEqual(['07:00', '18:30'])
  })

  test('take what was done: of the last that had begun, an hour early given, and of the first whatever came before', () => {
    const rounds = roundsInOrder(day)
    const of = (time: string) => roundOfInstant(rounds, at(time))?.id
    expect([of('03:00'), of('11:29'), of('11:30'), of('17:29'), of('17:30'), of('23:59')]).toEqual([
      ...['07:00', '07:00', '12:30', '12:30', '18:30', '18:30'],
    ])
    expect(roundOfInstant([], at('08:00'))).toBeUndefined()
    expect(latestRoundOf(rounds, { day, at: [at('07:20'), at('12:40')] })).toBe(at('12:30'))
    expect(latestRoundOf(rounds, { day, at: ['2026-03-09T18:40:00.000Z'] })).toBe(day.startsAt)
    expect(latestRoundOf(rounds, { day, at: [] })).toBe(day.startsAt)
  })

  test('that come before an instant, at midday and in the dark', () => {
    expect([
      roundBefore(day, at('12:31')).id,
      roundBefore(day, at('12:30')).id,
      roundBefore(day, at('06:00')).id,
    ]).toEqual(['12:30', '07:00', '07:00'])
    expect(afterMorning(day).id).toBe('12:30')
    // Of two rounds the other is the evening.
    expect(afterMorning(dayOf(['07:00', '18:30']).day).id).toBe('07:00')
    expect(afterMorning(dayOf(['07:00', '10:00', '15:00', '20:00']).day).id).toBe('15:00')
    expect(inTheDark(day, lastRound(day))).toBe(at('19:00'))
    expect(inTheDark(dayOf(['07:00', '21:00']).day, lastRound(dayOf(['07:00', '21:00']).day))).toBe(at('21:00'))
  })

  test('are spread over the day with the first and the last among them', () => {
    const six = dayOf(['06:00', '09:00', '12:00', '15:00', '18:00', '21:00']).day
    expect(ids(spreadRounds(six, 3))).toEqual(['06:00', '15:00', '21:00'])
    expect(ids(spreadRounds(six, 2))).toEqual(['06:00', '21:00'])
    expect(ids(spreadRounds(six, 1))).toEqual(['06:00'])
    expect(ids(spreadRounds(six, 0))).toEqual([])
    expect(spreadRounds(six, 7)).toHaveLength(6)
    for (let number = 2; number <= 6; number += 1) expect(new Set(ids(spreadRounds(six, number))).size).toBe(number)
  })
})

describe('light', () => {
  test('is as long as the lamps burn, over midnight too', () => {
    const { day } = dayOf(['07:00'])
    expect([
      hoursUntilDark(day, at('06:59')),
      hoursUntilDark(day, at('07:00')),
      hoursUntilDark(day, at('18:30')),
    ]).toEqual([...[null, 12, 0.5]])
    expect(hoursUntilDark(day, at('19:00'))).toBeNull()
    const late = dayOf(['07:00'], { lightsOnAt: '14:00', lightsOffAt: '02:00' }).day
    expect([hoursUntilDark(late, at('14:00')), hoursUntilDark(late, at('23:00'))]).toEqual([12, 3])
    expect([
      hoursUntilDark(late, at('01:00')),
      hoursUntilDark(late, at('02:00')),
      hoursUntilDark(late, at('13:59')),
    ]).toEqual([1, null, null])
  })

  test('and dark share out the hours between two instants', () => {
    const { room } = dayOf(['07:00'])
    expect(hoursByLight(room, { from: at('06:00'), to: at('08:00') })).toEqual({ light: 1, dark: 1 })
    expect(hoursByLight(room, { from: at('18:00'), to: '2026-03-11T08:00:00.000Z' })).toEqual({ light: 2, dark: 12 })
    expect(hoursByLight(room, { from: at('20:00'), to: at('23:00') })).toEqual({ light: 0, dark: 3 })
    const late = dayOf(['07:00'], { lightsOnAt: '14:00', lightsOffAt: '02:00' }).room
    // The evening before burns until two.
    expect(hoursByLight(late, { from: at('01:00'), to: at('15:00') })).toEqual({ light: 2, dark: 12 })
  })

  test('is when larvae are fed, the last so long before dark; where rounds do not allow it, at any lit one, then at any', () => {
    const feeds = (times: string[], number: number, hoursBeforeDark: number, lights = {}) =>
      ids(liveFeedRounds(dayOf(times, lights).day, { number, hoursBeforeDark }))
    expect(feeds(['07:00', '12:30', '18:30'], 3, 0)).toEqual(['07:00', '12:30', '18:30'])
    expect(feeds(['07:00', '12:30', '18:30'], 3, 2)).toEqual(['07:00', '12:30'])
    expect(feeds(['07:00', '12:30', '17:00'], 3, 2)).toEqual(['07:00', '12:30', '17:00'])
    // Two feeds come first: half an hour before dark is better than none.
    expect(feeds(['07:00', '18:30'], 2, 2)).toEqual(['07:00', '18:30'])
    expect(feeds(['07:00', '18:30'], 1, 2)).toEqual(['07:00'])
    expect(feeds(['05:00', '21:00'], 2, 0)).toEqual(['05:00', '21:00'])
    expect(feeds(['09:00'], 3, 0)).toEqual(['09:00'])
  })
})
