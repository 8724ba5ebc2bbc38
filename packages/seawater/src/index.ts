export {
  type AmmoniaInput,
  type UnionisedAmmonia,
  unionisedAmmonia,
  unionisedAmmoniaFraction,
  unionisedAmmoniaNitrogen,
} from './ammonia.ts'
export { ArgumentError } from './argument-error.ts'
export { convert, unitsByGroup } from './convert.ts'
export { density, salinityFromHydrometer, salinityFromSpecificGravity, specificGravity } from './density.ts'
export { fahrenheitPerC, poundG, toCelsius, toFahrenheit, usGallonL } from './exact-units.ts'
export {
  accumulatedDose,
  afterContinuousChange,
  afterWaterChanges,
  changeFraction,
  freshWaterToAddL,
  mixedSalinity,
  type SaltInput,
  salinityAfterEvaporation,
  saltToMixG,
  saltToRaiseG,
  type WaterPart,
  waterToMatchL,
} from './mixing.ts'
export { oxygenSaturation, oxygenShareOfSaturation } from './oxygen.ts'
export {
  conductivityFromSalinity,
  conductivityRatio,
  practicalSalinity,
  practicalSalinityFromConductivity,
  type WaterConditions,
} from './practical-salinity.ts'
export type { TemperatureScale } from './temperature-scale.ts'
