import { checkNumber, checkTemperatureC } from './check.ts'

export interface PublishedDuration {
  durationDays: number
  temperatureC: number
}

/**
 * Level of a species from durations seen elsewhere: their geometric mean after moving each to one temperature,
 * and the standard deviation of their logarithms (null for one).
 * @throws RangeError for an empty list or a value out of range.
 */
export function incubationLevel(input: {
  durations: readonly PublishedDuration[]
  referenceTemperatureC: number
  q10: number
}): { medianDays: number; logSpread: number | null } {
  const { durations, q10 } = input
  const referenceC = checkTemperatureC('referenceTemperatureC', input.referenceTemperatureC)
  checkNumber('q10', q10, { from: 1, to: 10 })
  if (durations.length === 0) throw new RangeError('durations: [] is empty; give one or more')
  const logs = durations.map(({ durationDays, temperatureC }, index) => {
    const days = checkNumber(`durations[${index}].durationDays`, durationDays, { from: 0.5, to: 400 })
    const shiftC = checkTemperatureC(`durations[${index}].temperatureC`, temperatureC) - referenceC
    return Math.log(days) + (Math.log(q10) * shiftC) / 10
  })
  const mean = logs.reduce((sum, value) => sum + value, 0) / logs.length
  const squares = logs.reduce((sum, value) => sum + (value - mean) ** 2, 0)
  return { medianDays: Math.exp(mean), logSpread: logs.length > 1 ? Math.sqrt(squares / (logs.length - 1)) : null }
}
