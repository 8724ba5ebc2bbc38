import { sayPercent } from '../numbers/say-number.ts'
import type { NumberVoice } from '../voice.ts'

/** A chance as people say it, with the number beside it: "likely (62%)". */
export function sayLikelihood(probability: number, voice: NumberVoice): string {
  const percent = sayPercent(probability, voice)
  if (probability >= 0.85) return `almost certain (${percent})`
  if (probability >= 0.5) return `likely (${percent})`
  if (probability >= 0.2) return `possible (${percent})`
  return `unlikely (${percent})`
}
