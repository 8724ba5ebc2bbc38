import { LatestByKey } from './latest-by-key.ts'

/**
 * Remembers pure answers by a key that holds everything they depend on: the same question has the same answer with or
 * without the memory. At most `most` are kept, and surely the latest half as many; an error is not remembered.
 */
export function remembered<T>(most: number): (key: string, compute: () => T) => T {
  const answers = new LatestByKey<{ value: T }>(most)
  return (key, compute) => {
    const known = answers.get(key)
    if (known) return known.value
    const value = compute()
    answers.set(key, { value })
    return value
  }
}

/**
 * Remembers pure answers by everything that they depend on, written as JSON: the same question has the same answer with
 * or without the memory. The oldest are forgotten past `most`.
 */
export function rememberedByContent<T>(most: number): (question: unknown, compute: () => T) => T {
  const answers = remembered<T>(most)
  return (question, compute) => answers(JSON.stringify(question), compute)
}

/**
 * Remembers pure answers by two words: joined into one key they would be hashed anew at every question. Of the first words the
 * oldest are forgotten past `most`, with all that was asked of them.
 */
export function rememberedByTwo<T>(most: number): (a: string, b: string | number, compute: () => T) => T {
  const of = remembered<Map<string | number, T>>(most)
  return (a, b, compute) => {
    const answers = of(a, () => new Map())
    const known = answers.get(b)
    if (known !== undefined) return known
    const value = compute()
    answers.set(b, value)
    return value
  }
}
