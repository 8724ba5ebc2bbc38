export type Plate = { wanted: number; has: number }

/**
 * An amount divided among those who share it so that whoever has least of what he wants gets first: in the end all that
 * got any have the same share of what they want, and none more than all of it.
 */
export function fairShares(plates: readonly Plate[], amount: number): number[] {
  const shareOf = ({ wanted, has }: Plate) => (wanted > 0 ? has / wanted : 1)
  const order = plates.map((plate, index) => ({ plate, index })).sort((a, b) => shareOf(a.plate) - shareOf(b.plate))
  let level = 0
  let rest = amount
  let wanted = 0
  for (const [rank, { plate }] of order.entries()) {
    wanted += plate.wanted
    const next = Math.min(1, rank + 1 < order.length ? shareOf(order[rank + 1]!.plate) : 1)
    const from = Math.max(level, Math.min(1, shareOf(plate)))
    level = from
    const cost = (next - from) * wanted
    if (cost >= rest || next >= 1) {
      level = wanted > 0 ? Math.min(1, from + rest / wanted) : from
      break
    }
    rest -= cost
    level = next
  }
  return plates.map(({ wanted: all, has }) => Math.max(0, level * all - has))
}
