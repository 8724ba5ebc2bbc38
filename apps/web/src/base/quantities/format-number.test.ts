import { describe, expect, it } from 'vitest'
import { formatNumber, parseNumber } from './format-number.ts'

describe('formatNumber', () => {
  it('shows what a syringe, a jug or a scale can show', () => {
    expect([0.25, 2.64, 18, 125.4, 1234].map(formatNumber)).toEqual(['0.25', '2.64', '18', '125', '1,234'])
  })

  it('shows estimates from ten thousand on with three digits and says millions in words', () => {
    expect([280_986, 1_250_000, 68e9].map(formatNumber)).toEqual(['281,000', '1.25 million', '68 billion'])
  })
})

describe('parseNumber', () => {
  it('takes a comma for a point and spaces for thousands', () => {
    expect(['2,5', '1 200', ' 0.6 '].map(parseNumber)).toEqual([2.5, 1200, 0.6])
  })

  it('takes nothing else for a number', () => {
    expect(['', 'two', '1.2.3', '-', 'Infinity', '0x10'].map(parseNumber)).toEqual(Array(6).fill(undefined))
  })
})
