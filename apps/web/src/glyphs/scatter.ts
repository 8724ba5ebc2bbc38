/** The golden ratio's share: steps by it spread points evenly without a pattern. */
const goldenShare = (Math.sqrt(5) - 1) / 2

/** Even points in the unit square, always the same ones, so that a glyph only gains or loses dots. */
export function scatter(count: number): [x: number, y: number][] {
  return Array.from({ length: count }, (_, i) => [
    Math.round((((i + 1) * goldenShare) % 1) * 100) / 100,
    Math.round((((i + 1) * goldenShare * goldenShare * 1.7 + i * 0.37) % 1) * 100) / 100,
  ])
}
