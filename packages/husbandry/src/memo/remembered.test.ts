import { describe, expect, test } from 'vitest'
import { remembered } from './remembered.ts'

/** A memory of ten that says of each question whether it had to work it out. */
function memory() {
  const ask = remembered<string>(10)
  return (key: string): boolean => {
    let isWorkedOut = false
    const answer = ask(key, () => {
      isWorkedOut = true
      return `answer to ${key}`
    })
    expect(answer).toBe(`answer to ${key}`)
    return isWorkedOut
  }
}

describe('what is remembered', () => {
  test('is worked out once', () => {
    const isWorkedOut = memory()
    expect([isWorkedOut('a'), isWorkedOut('a'), isWorkedOut('b'), isWorkedOut('a')]).toEqual([true, false, true, false])
  })

  test('outlives half as many new questions as are kept, and is forgotten after as many as are kept', () => {
    for (let others = 1; others <= 30; others += 1) {
      const isWorkedOut = memory()
      isWorkedOut('a')
      for (let index = 0; index < others; index += 1) isWorkedOut(`other ${index}`)
      if (others < 5) expect(isWorkedOut('a'), `${others} others`).toBe(false)
      if (others >= 10) expect(isWorkedOut('a'), `${others} others`).toBe(true)
    }
  })

  test('stays for as long as it is asked for', () => {
    const isWorkedOut = memory()
    isWorkedOut('a')
    for (let index = 0; index < 100; index += 1) {
      isWorkedOut(`other ${index}`)
      expect(isWorkedOut('a')).toBe(false)
    }
  })

  test('is no error: the next who asks works it out', () => {
    const ask = remembered<number>(10)
    const failing = () => {
      throw new Error('no water')
    }
    expect(() => ask('a', failing)).toThrow('no water')
    expect(ask('a', () => 7)).toBe(7)
  })
})
