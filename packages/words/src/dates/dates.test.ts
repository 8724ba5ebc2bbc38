import { locales } from '@fryward/shared'
import { describe, expect, it } from 'vitest'
import { addDays, daysBetween } from './day-arithmetic.ts'
import { parseTime } from './read-time.ts'
import { daysSince, sayDate, sayDay, sayDayMonth, sayDayTitle, sayMoment, sayNight, toPlainDate } from './say-date.ts'
import { sayPlainTime, sayTime } from './say-time.ts'

const british = { locale: 'en-GB', timeZone: 'Europe/London', units: 'metric' } as const
const american = { locale: 'en-US', timeZone: 'America/Denver', units: 'us' } as const

describe('days', () => {
  it('are counted by midnights of the room, not by full days', () => {
    const laid = '2026-11-22T17:40:00.000Z'
    expect(daysSince(laid, '2026-11-22', 'America/Denver')).toBe(0)
    expect(daysSince(laid, '2026-11-25', 'America/Denver')).toBe(3)
    expect(daysSince('2026-11-22T05:00:00.000Z', '2026-11-25', 'America/Denver')).toBe(4)
  })

  it('still to come are day 0', () => {
    expect(daysSince('2026-11-25T12:00:00.000Z', '2026-11-24', 'UTC')).toBe(0)
  })

  it('go on over the ends of months and over changes of the clock', () => {
    expect(addDays('2026-02-28', 1)).toBe('2026-03-01')
    expect(addDays('2028-02-28', 1)).toBe('2028-02-29')
    expect(addDays('2026-01-01', -1)).toBe('2025-12-31')
    expect(daysBetween('2026-03-28', '2026-03-30')).toBe(2)
    expect(daysBetween('2026-10-26', '2026-10-24')).toBe(-2)
  })
})

describe('a date', () => {
  it('is said in the order of the locale, in English words', () => {
    expect(sayDate('2026-11-26', british)).toBe('Thu 26 Nov')
    expect(sayDate('2026-11-26', american)).toBe('Thu, Nov 26')
    expect(sayDate('2026-11-26', { locale: 'de-DE' })).toBe('Thu 26 Nov')
    expect(sayDayMonth('2026-11-26', american)).toBe('Nov 26')
  })

  it('is said by its name where it is near', () => {
    const said = ['2026-11-24', '2026-11-25', '2026-11-26', '2026-11-27', '2026-12-03']
    expect(said.map((date) => sayDay(date, '2026-11-25', british))).toEqual([
      ...['yesterday', 'today', 'tomorrow', 'Friday', 'Thu 3 Dec'],
    ])
    expect(said.slice(0, 3).map((date) => sayNight(date, '2026-11-25', british))).toEqual([
      ...['last night', 'tonight', 'tomorrow night'],
    ])
  })

  it('over a list says the weekday once', () => {
    const said = ['2026-11-25', '2026-11-26', '2026-11-27'].map((date) => sayDayTitle(date, '2026-11-25', british))
    expect(said).toEqual(['Wednesday 25 Nov', 'Tomorrow, Thursday 26 Nov', 'Friday 27 Nov'])
  })

  it('names no day as year-month-day in any locale', () => {
    for (const locale of locales) expect(sayDate('2026-11-26', { locale })).not.toContain('2026')
  })
})

describe('a time of day', () => {
  it('has twelve or twenty-four hours as the locale’s clock', () => {
    const at = '2026-11-25T19:05:00Z'
    expect(sayTime(at, { locale: 'en-GB', timeZone: 'UTC' })).toBe('19:05')
    expect(sayTime(at, { locale: 'en-US', timeZone: 'UTC' })).toBe('7:05\u00a0pm')
    expect(sayPlainTime('00:00', american)).toBe('12:00\u00a0am')
    expect(sayMoment(at, '2026-11-26T10:00:00Z', american)).toBe('yesterday 12:05\u00a0pm')
  })

  it('is read back as it was said, in every locale with Latin digits', () => {
    for (const locale of locales.filter((one) => one !== 'ar-EG'))
      for (const time of ['00:00', '00:30', '07:05', '12:00', '12:59', '19:30', '23:59'])
        expect([locale, parseTime(sayPlainTime(time, { locale }))]).toEqual([locale, time])
  })

  it('is read with or without its colon, as a phone’s number pad lets it be typed', () => {
    expect(['7', '730', '7:30', '07:30', '19.30', '1930', ' 19 : 30 ', '0'].map(parseTime)).toEqual([
      ...['07:00', '07:30', '07:30', '07:30', '19:30', '19:30', '19:30', '00:00'],
    ])
    expect(['7 pm', '7:30 PM', '730pm', '12 am', '12 p.m.'].map(parseTime)).toEqual([
      ...['19:00', '19:30', '19:30', '00:00', '12:00'],
    ])
  })

  it('is none when no clock shows it', () => {
    const none = ['', '24', '24:00', '760', '7:3', '12345', 'seven', '-7', '19:30 pm', '0 am']
    expect(none.map(parseTime)).toEqual(none.map(() => undefined))
  })
})

describe('the local date of an instant', () => {
  it('is that of the zone', () => {
    expect(toPlainDate('2026-11-25T02:00:00Z', 'America/Denver')).toBe('2026-11-24')
  })
})
