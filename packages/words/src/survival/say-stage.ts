import type { CareKind, SurvivalShare, SurvivalStage } from '@fryward/shared'
import { sayStage } from '../labels/survival.ts'
import { sayPercent, sayWhole } from '../numbers/say-number.ts'
import type { NumberVoice } from '../voice.ts'

type Ends = Pick<SurvivalStage, 'atLeast' | 'atMost'>

/** "60", "50 to 60", "at least 50", "at most 60"; null where nothing is known. */
export function sayEnds({ atLeast, atMost }: Ends, voice: NumberVoice): string | null {
  if (atLeast !== null && atMost !== null)
    return atLeast === atMost ? sayWhole(atMost, voice) : `${sayWhole(atLeast, voice)} to ${sayWhole(atMost, voice)}`
  if (atLeast !== null) return `at least ${sayWhole(atLeast, voice)}`
  return atMost === null ? null : `at most ${sayWhole(atMost, voice)}`
}

/** How many reached a stage, or why that is not told. */
export function sayReached(stage: Pick<SurvivalStage, 'status' | 'atLeast' | 'atMost'>, voice: NumberVoice): string {
  const number = sayEnds(stage, voice)
  if (stage.status === 'not_yet') return 'not yet'
  if (stage.status === 'not_followed') return 'not followed'
  if (number === null) return 'not known'
  return stage.status === 'so_far' ? `${number} so far` : number
}

/** "75% (66 to 82%)": never without its interval. */
export const sayShare = ({ share, lower, upper }: SurvivalShare, voice: NumberVoice): string =>
  `${sayPercent(share, voice)} (${sayPercent(lower, voice).slice(0, -1)} to ${sayPercent(upper, voice)})`

/** "75% (66 to 82%) of hatched"; null where no share is known. */
export const sayShareOf = (
  { share, fromStage }: Pick<SurvivalStage, 'share' | 'fromStage'>,
  care: CareKind,
  voice: NumberVoice,
): string | null =>
  share && fromStage ? `${sayShare(share, voice)} of ${sayStage(fromStage, care).toLowerCase()}` : null
