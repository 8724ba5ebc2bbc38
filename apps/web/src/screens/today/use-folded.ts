import { useState } from 'react'

/**
 * Which of a list stand folded: those that were quiet when it was opened. One that is finished while somebody stands at it stays,
 * so that nothing moves under the thumb, and one at which something happens stands open from then on.
 */
export function useFolded<T>(quiet: readonly T[]): readonly T[] {
  const [atFirst, setAtFirst] = useState(quiet)
  const folded = atFirst.filter((one) => quiet.includes(one))
  if (folded.length < atFirst.length) setAtFirst(folded)
  return folded
}
