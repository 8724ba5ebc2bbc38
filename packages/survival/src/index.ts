export { ArgumentError } from './argument-error.ts'
export {
  clopperPearsonInterval,
  type Interval,
  type Proportion,
  poissonInterval,
  proportionDifferenceInterval,
  wilsonInterval,
} from './intervals.ts'
