export type Plate = { wanted: number; has: number }

/**
 * An amount divided among those who share it so that whoever has least of what he wants gets first: in the end all that
 * got any have the same share of what they want, and none more than all of it.
 */
export function fairShares(plates: readonly Plate[], amount: number): number[] {
  const missing = plates.map(({ wanted, has }) => Math.max(0, wanted - has))
  if (missing.reduce((sum, each) => sum + each, 0) <= amount) return missing
  let wanted = 0
  let has = 0
  let level = Number.POSITIVE_INFINITY
  // Emptiest first: all that are lower than what is poured stands are filled to the same level.
  for (const plate of plates.toSorted((a, b) => filledOf(a) - filledOf(b))) {
    if (level <= filledOf(plate)) break
    wanted += plate.wanted
    has += plate.has
    level = (amount + has) / wanted
  }
  return plates.map((plate) => Math.max(0, level * plate.wanted - plate.has))
}

const filledOf = ({ wanted, has }: Plate): number => (wanted > 0 ? has / wanted : 1)
