import { EigenvalueDecomposition, Matrix } from 'ml-matrix'

type Objective = (point: readonly number[]) => number

/** Step of the difference quotients; parameters here are logarithms, so one step size fits all. */
const STEP = 1e-4

const dot = (a: readonly number[], b: readonly number[]) => a.reduce((sum, value, i) => sum + value * b[i]!, 0)

function moved(point: readonly number[], direction: readonly number[], length: number): number[] {
  return point.map((value, i) => value + length * direction[i]!)
}

function unit(size: number, index: number): number[] {
  return Array.from({ length: size }, (_, i) => (i === index ? 1 : 0))
}

function gradientAt(objective: Objective, point: readonly number[]): number[] {
  return point.map((_, i) => {
    const axis = unit(point.length, i)
    return (objective(moved(point, axis, STEP)) - objective(moved(point, axis, -STEP))) / (2 * STEP)
  })
}

/** Halves the step until the objective falls enough (Armijo); null when no step helps. */
function lineSearch(objective: Objective, point: readonly number[], value: number, direction: number[], slope: number) {
  // Parameters are logarithms: a first step past 2 would multiply one by more than seven.
  const longest = Math.max(...direction.map(Math.abs))
  let length = longest > 2 ? 2 / longest : 1
  for (let attempt = 0; attempt < 30; attempt += 1) {
    const candidate = moved(point, direction, length)
    const reached = objective(candidate)
    if (Number.isFinite(reached) && reached <= value + 1e-4 * length * slope) return { candidate, reached }
    length /= 2
  }
  return null
}

export type Minimum = { point: number[]; value: number; isConverged: boolean }

/**
 * Minimum of a smooth function by the quasi-Newton method of Broyden, Fletcher, Goldfarb and Shanno with difference
 * quotients (Nocedal & Wright 2006, Numerical Optimization, ch. 6).
 */
export function minimise(objective: Objective, start: readonly number[], maximumSteps = 200): Minimum {
  const size = start.length
  let point = [...start]
  let value = objective(point)
  let gradient = gradientAt(objective, point)
  let inverse = Matrix.eye(size)
  for (let step = 0; step < maximumSteps; step += 1) {
    let direction = inverse
      .mmul(Matrix.columnVector(gradient))
      .to1DArray()
      .map((entry) => -entry)
    let slope = dot(direction, gradient)
    if (slope >= 0) {
      inverse = Matrix.eye(size)
      direction = gradient.map((entry) => -entry)
      slope = -dot(gradient, gradient)
    }
    if (-slope < 1e-9) return { point, value, isConverged: true }
    const found = lineSearch(objective, point, value, direction, slope)
    if (found === null) return { point, value, isConverged: -slope < 1e-4 }
    const nextGradient = gradientAt(objective, found.candidate)
    const s = found.candidate.map((entry, i) => entry - point[i]!)
    const y = nextGradient.map((entry, i) => entry - gradient[i]!)
    inverse = updatedInverse(inverse, s, y)
    point = found.candidate
    value = found.reached
    gradient = nextGradient
  }
  return { point, value, isConverged: false }
}

function updatedInverse(inverse: Matrix, s: readonly number[], y: readonly number[]): Matrix {
  const curvature = dot(s, y)
  if (curvature <= 1e-10) return inverse
  const sColumn = Matrix.columnVector([...s])
  const yColumn = Matrix.columnVector([...y])
  const left = Matrix.eye(s.length).sub(sColumn.mmul(yColumn.transpose()).div(curvature))
  return left.mmul(inverse).mmul(left.transpose()).add(sColumn.mmul(sColumn.transpose()).div(curvature))
}

/**
 * Covariance of estimates at a minimum of minus the log likelihood: the inverse of its matrix of second differences.
 * Directions that the data leave flat are held to at most `flattest` in variance.
 */
export function covarianceAt(objective: Objective, point: readonly number[], flattest = 4): number[][] {
  const size = point.length
  const step = 1e-2
  const base = objective(point)
  const hessian = Matrix.zeros(size, size)
  const at = (i: number, j: number, a: number, b: number) =>
    objective(moved(moved(point, unit(size, i), a * step), unit(size, j), b * step))
  for (let i = 0; i < size; i += 1) {
    hessian.set(i, i, (at(i, i, 1, 0) - 2 * base + at(i, i, -1, 0)) / step ** 2)
    for (let j = 0; j < i; j += 1) {
      const mixed = (at(i, j, 1, 1) - at(i, j, 1, -1) - at(i, j, -1, 1) + at(i, j, -1, -1)) / (4 * step ** 2)
      hessian.set(i, j, mixed)
      hessian.set(j, i, mixed)
    }
  }
  const { eigenvectorMatrix: vectors, realEigenvalues } = new EigenvalueDecomposition(hessian, {
    assumeSymmetric: true,
  })
  const variances = Matrix.diag(realEigenvalues.map((curvature) => 1 / Math.max(curvature, 1 / flattest)))
  const covariance = vectors.mmul(variances).mmul(vectors.transpose())
  // Rounding must not leave it lopsided: a Cholesky factor is taken of it later.
  return Matrix.add(covariance, covariance.transpose()).div(2).to2DArray()
}
