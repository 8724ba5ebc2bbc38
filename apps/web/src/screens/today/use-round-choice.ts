'use client'

import type { Day } from '@fryward/shared'
import { useState } from 'react'
import { currentRoundId, roundsOf, roundUnderWay } from './arrange.ts'

/**
 * The round on the screen. It follows the clock from round to round until somebody chooses one; what is signed off never
 * turns the page under their thumb.
 */
export function useRoundChoice(day: Day, now: Date) {
  const under = roundUnderWay(day, now)
  const byClock = () => ({ under, roundId: currentRoundId(day, now), isByHand: false })
  const [choice, setChoice] = useState(byClock)
  const isThere = roundsOf(day).some((round) => round.id === choice.roundId)
  const isOver = !isThere || (!choice.isByHand && choice.under !== under)
  const current = isOver ? byClock() : choice
  if (isOver && current.roundId !== choice.roundId) setChoice(current)
  return {
    roundId: current.roundId,
    chooseRound: (roundId: string) => setChoice({ under, roundId, isByHand: true }),
  }
}
