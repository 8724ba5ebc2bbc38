import { type FeederCosts, firstCosts, nextCosts } from './feeder-costs.ts'
import { fewerFeeders, type Shared } from './fewer-feeders.ts'
import { leftName, programOf, takenName } from './program.ts'
import type { FoodQuestion } from './question.ts'
import { nothing, solve } from './solve.ts'
import type { Taking } from './taking.ts'

// Answers in which food comes together where there is a choice; counted and not timed. Where nothing is missing, the search
// for fewer feeders finds what a fourth one would.
const mostAnswers = { short: 4, enough: 3 }

/** Food shared out where not everybody can have one culture of its own: the least shortfall, then few feeders. */
export async function shareOut(question: FoodQuestion): Promise<Taking> {
  let costs = firstCosts(question)
  let answer = await answerAt(question, costs)
  if (!hasChoice(costs)) return answer.shared.taking
  for (let count = 1; count < mostAnswers[isShort(answer) ? 'short' : 'enough']; count += 1) {
    costs = nextCosts(question, { costs, given: answer.given })
    answer = await answerAt(question, costs)
  }
  const may = costs.map((row) => row.map((cost) => cost !== null))
  return fewerFeeders(question, { may, unit: answer.unit, shared: answer.shared })
}

const isShort = ({ unit, shared }: Answer): boolean => shared.minded > nothing * unit

type Answer = {
  unit: number
  /** Of a culture to an eater over all days, in average days' food. */
  given: (culture: number, eater: number) => number
  shared: Shared
}

async function answerAt(question: FoodQuestion, costs: FeederCosts): Promise<Answer> {
  const program = programOf(question, costs)
  const { unit } = program
  const { cost, amountOf } = await solve(program)
  const given = (culture: number, eater: number) =>
    question.eaters[eater]!.wanted.reduce((sum, _, day) => sum + amountOf(takenName(culture, eater, day)), 0)
  const ofFeeders = costs.flatMap((row, culture) => row.map((each, eater) => (each ?? 0) * given(culture, eater)))
  return {
    unit,
    given,
    shared: {
      links: costs.map((row, culture) => row.map((each, eater) => each !== null && given(culture, eater) > nothing)),
      minded: (cost - ofFeeders.reduce((sum, each) => sum + each, 0)) * unit,
      taking: {
        taken: (culture, eater, day) => amountOf(takenName(culture, eater, day)) * unit,
        left: (culture, day) => amountOf(leftName(culture, day)) * unit,
      },
    },
  }
}

/** Some eater may be fed from more than one culture. */
const hasChoice = (costs: FeederCosts): boolean =>
  (costs[0] ?? []).some((_, eater) => costs.filter((row) => row[eater] !== null).length > 1)
