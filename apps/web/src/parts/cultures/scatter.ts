/** Steps of the plastic number's powers spread points evenly over a square without a pattern. M. Roberts (2018), R2 sequence. */
const plastic = 1.324717957
const stepX = 1 / plastic
const stepY = 1 / plastic ** 2

const round = (value: number) => Math.round(value * 100) / 100

/** Even points in the unit square, always the same ones, so that a glyph only gains or loses dots. */
export function scatter(count: number): [x: number, y: number][] {
  return Array.from({ length: count }, (_, i) => [round((0.5 + i * stepX) % 1), round((0.5 + i * stepY) % 1)])
}
