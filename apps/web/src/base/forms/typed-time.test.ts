import { describe, expect, it } from 'vitest'
import { parseTime } from './typed-time.ts'

describe('a typed time of day', () => {
  it('is read with or without its colon, as a phone’s number pad lets it be typed', () => {
    expect(['7', '730', '7:30', '07:30', '19.30', '1930', ' 19 : 30 ', '0'].map(parseTime)).toEqual([
      ...['07:00', '07:30', '07:30', '07:30', '19:30', '19:30', '19:30', '00:00'],
    ])
  })

  it('is none when no clock shows it', () => {
    expect(['', '24', '24:00', '760', '7:3', '12345', 'seven', '-7', '7:30 pm'].map(parseTime)).toEqual(
      Array(9).fill(undefined),
    )
  })
})
