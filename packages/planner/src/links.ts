/** links[culture][eater]: whether one is fed from the other on any day. */
export type Links = readonly (readonly boolean[])[]

export const feedersOf = (links: Links, eater: number): number[] =>
  links.flatMap((row, culture) => (row[eater] ? [culture] : []))

export const fedBy = (links: Links, culture: number): number[] =>
  links[culture]!.flatMap((isFed, eater) => (isFed ? [eater] : []))

export const withFeeders = (links: Links, eater: number, feeders: readonly number[]): Links =>
  links.map((row, culture) => row.with(eater, feeders.includes(culture)))

/** Cultures and eaters that hang together by their links: what happens in one part is nothing to another. */
export type Part = { cultures: number[]; eaters: number[] }

/** In order of their eaters; cultures that feed nobody are in none. */
export function partsOf(links: Links): Part[] {
  const parts: Part[] = []
  for (const eater of (links[0] ?? []).keys()) {
    if (parts.some(({ eaters }) => eaters.includes(eater))) continue
    parts.push(partAround(links, eater))
  }
  return parts
}

function partAround(links: Links, first: number): Part {
  const cultures = new Set<number>()
  const eaters = new Set([first])
  // A set gives what is added while it is gone through.
  for (const eater of eaters)
    for (const culture of feedersOf(links, eater)) {
      cultures.add(culture)
      for (const other of fedBy(links, culture)) eaters.add(other)
    }
  const inOrder = (numbers: Set<number>) => [...numbers].sort((a, b) => a - b)
  return { cultures: inOrder(cultures), eaters: inOrder(eaters) }
}
