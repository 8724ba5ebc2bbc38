import { CholeskyDecomposition, Matrix } from 'ml-matrix'
import { seededRandom } from './random.ts'

/** Draws taken: enough for a spread to two figures. */
const DRAWS = 400
/** Degrees of freedom of the Student distribution drawn from: heavier tails than any posterior here. */
const TAIL = 5

export type Posterior = { mean: number[]; covariance: number[][] }

/**
 * Mean and covariance under exp(-cost), by importance sampling from a Student distribution around the minimum (Geweke
 * 1989, Econometrica 57:1317-1339). A curvature at the minimum cannot see that the spread of one parameter depends on
 * another; this can. Draws are seeded: the same cost gives the same answer.
 */
export function posteriorAround({
  cost,
  point,
  covariance,
}: {
  cost: (point: readonly number[]) => number
  point: readonly number[]
  covariance: readonly (readonly number[])[]
}): Posterior {
  const factor = new CholeskyDecomposition(new Matrix(covariance.map((row) => [...row]))).lowerTriangularMatrix
  const random = seededRandom(1)
  const size = point.length
  const least = cost(point)
  const draws = Array.from({ length: DRAWS }, () => {
    const normals = point.map(() => random.normal())
    let chiSquare = 0
    for (let k = 0; k < TAIL; k += 1) chiSquare += random.normal() ** 2
    const scale = Math.sqrt(TAIL / chiSquare)
    const shift = factor.mmul(Matrix.columnVector(normals)).to1DArray()
    const drawn = point.map((value, i) => value + scale * shift[i]!)
    const distance = scale * scale * normals.reduce((sum, value) => sum + value * value, 0)
    const logProposal = (-(TAIL + size) / 2) * Math.log1p(distance / TAIL)
    const logWeight = least - cost(drawn) - logProposal
    return { drawn, logWeight: Number.isFinite(logWeight) ? logWeight : Number.NEGATIVE_INFINITY }
  })
  const heaviest = Math.max(...draws.map((draw) => draw.logWeight))
  const weighted = draws.map(({ drawn, logWeight }) => ({ drawn, weight: Math.exp(logWeight - heaviest) }))
  const total = weighted.reduce((sum, { weight }) => sum + weight, 0)
  const average = (f: (drawn: readonly number[]) => number) =>
    weighted.reduce((sum, { drawn, weight }) => sum + weight * f(drawn), 0) / total
  const mean = point.map((_, i) => average((drawn) => drawn[i]!))
  const deviation = (drawn: readonly number[], i: number) => drawn[i]! - mean[i]!
  return {
    mean,
    covariance: point.map((_, i) => point.map((_, j) => average((drawn) => deviation(drawn, i) * deviation(drawn, j)))),
  }
}
