import { measurableMl } from './measures.ts'

/** A dose as a syringe shows it: under its first mark it is given diluted, 1 in 10 or 1 in 100. */
export type MeasuredDose = { amountMl: number; dilution: 1 | 10 | 100 }

export function measuredDose(mL: number): MeasuredDose {
  const dilution = mL >= 0.1 ? 1 : mL >= 0.01 ? 10 : 100
  return { amountMl: Math.max(0.1, measurableMl(mL * dilution)), dilution }
}
