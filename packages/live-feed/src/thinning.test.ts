import { describe, expect, it } from 'vitest'
import { atShare, type Thinning, thinCultures } from './testing/keep-as-advised.ts'
import { bestConstant, keep, keptCulture } from './testing/kept-cultures.ts'

/** Seeds on which nothing was chosen; `npm run bench thinning` has sixty of them. */
const HELD_OUT = Array.from({ length: 30 }, (_, i) => keptCulture(5001 + i))

describe('thinning as advised, on thirty cultures kept for six weeks', () => {
  let tried: Thinning | undefined
  const thinned = () => {
    tried ??= thinCultures(HELD_OUT)
    return tried
  }

  it('harvests 0.95 of what the best constant share in hindsight would have given, 0.85 in the worst tenth', () => {
    expect(atShare(thinned().ratios, 0.5)).toBeGreaterThanOrEqual(0.95)
    expect(atShare(thinned().ratios, 0.1)).toBeGreaterThanOrEqual(0.85)
  })

  it('asks for a jug or for nothing, and seldom for nothing once a culture is ripe', () => {
    expect(thinned().underATwentieth).toBe(0)
    expect(thinned().none).toBeLessThanOrEqual(0.03)
  })

  it('never takes more than half and never goes under the floor', () => {
    expect(thinned().most).toBeLessThanOrEqual(0.5)
    expect(thinned().underFloor).toBe(0)
  })
})

describe('the kept cultures themselves', () => {
  it('are the same for the same seed', () => {
    expect(keptCulture(7)).toEqual(keptCulture(7))
    expect(keptCulture(7)).not.toEqual(keptCulture(8))
  })

  it('give less under a share half or twice the best', () => {
    for (const culture of HELD_OUT.slice(0, 10)) {
      const best = bestConstant(culture)
      const constant = (share: number) => keep(culture, ({ day }) => (day >= 3 ? share : 0)).harvested
      expect(constant(best.share / 2)).toBeLessThan(best.harvested)
      expect(constant(Math.min(0.9, best.share * 2))).toBeLessThan(best.harvested)
    }
  })

  it('settle at what they can hold when nothing is taken', () => {
    for (const culture of HELD_OUT.slice(0, 10)) {
      const { leftPerMl } = keep(culture, () => 0)
      const late = leftPerMl.slice(-10).reduce((sum, density) => sum + density / 10, 0)
      expect(late / culture.capacityPerMl).toBeGreaterThan(0.6)
      expect(late / culture.capacityPerMl).toBeLessThan(1.5)
    }
  })
})
