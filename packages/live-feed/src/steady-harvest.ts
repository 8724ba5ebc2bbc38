import type { CultureParameters } from './culture-parameters.ts'
import { seededRandom } from './random.ts'
import { rateDrawer } from './rate-draws.ts'

export type SteadyHarvest = {
  /** Density to leave behind after a harvest, per mL: held there, the culture gives most over weeks. */
  heldPerMl: number
  /** Density it is expected to have regrown to a day later, per mL. */
  regrownPerMl: number
  /** What can go every day with the density staying where it is. */
  shareOfVolume: number
}

/** Sets of rates weighed against each other; enough for the density to a few per cent. */
const DRAWS = 200
/** Densities tried, from a twentieth of the capacity to all of it. */
const DENSITIES = 60
const THINNEST = 0.05

const crowdedSteps = Array.from({ length: DENSITIES }, (_, step) => THINNEST ** (1 - step / (DENSITIES - 1)))

/**
 * The density worth holding: a stock that meets its own luck every day yields most, in the long run, when each harvest
 * leaves the same number behind (constant escapement: Reed 1979, J. Environ. Econ. Manage. 6:350-363; from memory),
 * here the one whose regrowth over a day, by the logistic, is greatest over all rates that the history leaves open.
 */
export function steadyHarvest(
  parameters: CultureParameters,
  { dilutionPerDay = 0, seed = 1 }: { dilutionPerDay?: number; seed?: number } = {},
): SteadyHarvest {
  const drawRates = rateDrawer(parameters, seededRandom(seed))
  const draws = Array.from({ length: DRAWS }, () => {
    const { growthPerDay, capacityPerMl } = drawRates()
    const net = growthPerDay - dilutionPerDay
    const factor = Math.exp(net)
    const crowding = growthPerDay / capacityPerMl
    return { factor, perMl: crowding * (Math.abs(net) < 1e-9 ? 1 : (factor - 1) / net) }
  })
  let best: SteadyHarvest = {
    heldPerMl: parameters.capacityPerMl,
    regrownPerMl: parameters.capacityPerMl,
    shareOfVolume: 0,
  }
  let most = 0
  for (const crowded of crowdedSteps) {
    const heldPerMl = crowded * parameters.capacityPerMl
    let surplus = 0
    // A set of rates under which so dense a culture would shrink yields nothing there; it takes nothing away either.
    for (const { factor, perMl } of draws) {
      surplus += Math.max(0, (factor * heldPerMl) / (1 + perMl * heldPerMl) - heldPerMl) / DRAWS
    }
    if (surplus <= most) continue
    most = surplus
    const regrownPerMl = heldPerMl + surplus
    best = { heldPerMl, regrownPerMl, shareOfVolume: surplus / regrownPerMl }
  }
  return best
}
