import { ArgumentError } from '@fryward/survival'
import { CholeskyDecomposition, Matrix } from 'ml-matrix'
import { type CultureParameters, type CultureRates, logsFromRates, ratesFromLogs } from './culture-parameters.ts'
import type { Random } from './random.ts'

/**
 * Draws rates as they may be, given how well the history pins them down: normal logarithms around the estimates.
 * @throws ArgumentError when logCovariance is no covariance.
 */
export function rateDrawer(parameters: CultureParameters, random: Random): () => CultureRates {
  const centre = logsFromRates(parameters)
  const factor = new CholeskyDecomposition(new Matrix(parameters.logCovariance.map((row) => [...row])))
  if (!factor.isPositiveDefinite()) {
    throw new ArgumentError({
      argument: 'parameters.logCovariance',
      value: 'not positive definite',
      allowed: 'a covariance, as fitCulture gives it',
    })
  }
  const lower = factor.lowerTriangularMatrix.to2DArray()
  return () => {
    const normals = centre.map(() => random.normal())
    return ratesFromLogs(
      centre.map((log, i) => {
        let shift = 0
        for (let j = 0; j <= i; j += 1) shift += lower[i]![j]! * normals[j]!
        return log + shift
      }),
    )
  }
}
