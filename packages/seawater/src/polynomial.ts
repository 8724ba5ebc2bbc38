/** Value of a polynomial by Horner's rule; coefficients from the constant term up. */
export function polynomial(coefficients: readonly number[], x: number): number {
  return coefficients.reduceRight((sum, coefficient) => sum * x + coefficient, 0)
}
