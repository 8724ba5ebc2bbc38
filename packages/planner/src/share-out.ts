import { type FeederCosts, firstCosts, nextCosts } from './feeder-costs.ts'
import { leftName, programOf, takenName } from './program.ts'
import type { FoodQuestion } from './question.ts'
import { solve } from './solve.ts'

/** What is taken from each culture for each eater on each day, and what the plan counts on being left, in animals. */
export type Taking = {
  taken: (culture: number, eater: number, day: number) => number
  left: (culture: number, day: number) => number
}

// Answers in which food comes together where there is a choice; counted and not timed.
const mostAnswers = 4

/** Food shared out where not everybody can have one culture of its own: the least shortfall, then few feeders. */
export async function shareOut(question: FoodQuestion): Promise<Taking> {
  let costs: FeederCosts = firstCosts(question)
  const answers = hasChoice(costs) ? mostAnswers : 1
  for (let answer = 1; ; answer += 1) {
    const program = programOf(question, costs)
    const { amountOf } = await solve(program)
    if (answer === answers)
      return {
        taken: (culture, eater, day) => amountOf(takenName(culture, eater, day)) * program.unit,
        left: (culture, day) => amountOf(leftName(culture, day)) * program.unit,
      }
    const given = (culture: number, eater: number) =>
      question.eaters[eater]!.wanted.reduce((sum, _, day) => sum + amountOf(takenName(culture, eater, day)), 0)
    costs = nextCosts(question, { costs, given })
  }
}

/** Some eater may be fed from more than one culture. */
const hasChoice = (costs: FeederCosts): boolean =>
  (costs[0] ?? []).some((_, eater) => costs.filter((row) => row[eater] !== null).length > 1)
