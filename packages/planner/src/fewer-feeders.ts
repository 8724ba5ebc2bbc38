import { fedByHand } from './feed-by-hand.ts'
import { fedBy, feedersOf, type Links, type Part, partsOf, withFeeders } from './links.ts'
import { mightFeed } from './might-feed.ts'
import { leftName, programOf, takenName } from './program.ts'
import type { FoodQuestion } from './question.ts'
import { nothing, solve } from './solve.ts'
import type { Taking } from './taking.ts'

// Rows of programs that are solved on the way, and links that are looked at: counted and not timed.
const mostRows = 1500
const mostLooks = 4000
/** Who misses more than so many average days' food when fed by hand is hardly ever fed by a program. common practice */
const worthAProgram = 2

/** How a part is fed, and what it misses, each animal as much as its day counts; a backup's food counts a little too. */
type PartAnswer = { minded: number; taking: Taking }

type Search = {
  question: FoodQuestion
  /** May one be fed from the other at all? */
  may: Links
  /** An average day's food. */
  unit: number
  isShort: boolean
  mostMinded: number
  known: Map<string, PartAnswer | null>
  rows: number
  looks: number
}

/** Food as it was shared out, and how much is minded of what is missing of it. */
export type Shared = { links: Links; minded: number; taking: Taking }

/**
 * The same food from fewer cultures, with no more missing: batches are joined to one culture one by one, and two trade
 * places where that lets one of them have one. A part of the room that nobody misses anything in is fed by hand; the rest is
 * asked of the solver, so many rows of it and no more.
 */
export async function fewerFeeders(
  question: FoodQuestion,
  { may, unit, shared }: { may: Links; unit: number; shared: Shared },
): Promise<Taking> {
  const search: Search = {
    ...{ question, may, unit, known: new Map(), rows: 0, looks: 0 },
    isShort: shared.minded > nothing * unit,
    mostMinded: shared.minded * (1 + nothing) + nothing * unit,
  }
  let best: { links: Links; answers: PartAnswer[] | null } = { links: shared.links, answers: null }
  for (;;) {
    const better = await firstThatFeeds(search, fewer(search, best.links))
    if (!better) return best.answers ? together(best.links, best.answers) : shared.taking
    best = better
  }
}

async function firstThatFeeds(search: Search, choices: Iterable<Links>) {
  for (const links of choices) {
    search.looks += 1
    // What is short is asked of the solver alone.
    if (search.looks > mostLooks || (search.isShort && search.rows > mostRows)) return null
    const answers = await answersOf(search, links)
    if (answers) return { links, answers }
  }
  return null
}

/** Links with one fewer or more: an eater to one culture, or off one of three, or to one whose eater moves to what it leaves. */
function* fewer({ question, may }: Search, links: Links): Generator<Links> {
  const split = question.eaters.flatMap((_, eater) => (feedersOf(links, eater).length > 1 ? [eater] : []))
  const choices = (eater: number) => inOrderOfChoice(question, { may, links, eater })
  for (const eater of split) for (const culture of choices(eater)) yield withFeeders(links, eater, [culture])
  for (const eater of split) {
    const feeders = feedersOf(links, eater)
    if (feeders.length > 2)
      for (const culture of feeders)
        yield withFeeders(
          links,
          eater,
          feeders.filter((each) => each !== culture),
        )
  }
  for (const eater of split)
    for (const culture of choices(eater))
      for (const other of fedBy(links, culture)) {
        if (other === eater) continue
        const joined = withFeeders(links, eater, [culture])
        const rest = feedersOf(links, other).filter((each) => each !== culture)
        for (const left of feedersOf(links, eater))
          if (left !== culture && may[left]![other]) yield withFeeders(joined, other, [...rest, left])
      }
}

/** Cultures that may feed an eater: those that feed it now, then those that do by the plan so far. */
function inOrderOfChoice(
  { cultures, eaters }: FoodQuestion,
  { may, links, eater }: { may: Links; links: Links; eater: number },
): number[] {
  const rank = (culture: number) =>
    (eaters[eater]!.fedFrom.includes(cultures[culture]!.id) ? 0 : 2) + (links[culture]![eater] ? 0 : 1)
  return feedersOf(may, eater).sort((a, b) => rank(a) - rank(b))
}

/** Each part's answer; null where together they miss more than is missing anyway, or where the work is at its end. */
async function answersOf(search: Search, links: Links): Promise<PartAnswer[] | null> {
  let minded = 0
  const answers: PartAnswer[] = []
  for (const part of partsOf(links)) {
    const answer = await answerOf(search, part, links)
    minded += answer?.minded ?? Number.POSITIVE_INFINITY
    if (!answer || minded > search.mostMinded) return null
    answers.push(answer)
  }
  return answers
}

async function answerOf(search: Search, part: Part, links: Links): Promise<PartAnswer | null> {
  const key = part.eaters.map((eater) => `${eater}:${feedersOf(links, eater)}`).join(' ')
  const known = search.known.get(key)
  if (known !== undefined) return known
  const byHand = search.isShort || !isFree(search, part) ? 'unsaid' : answerByHand(search, part, links)
  const answer = byHand === 'unsaid' ? await answerBySolver(search, part, links) : byHand
  search.known.set(key, answer)
  return answer
}

const isFree = ({ question }: Search, { cultures }: Part): boolean =>
  cultures.every((culture) => question.cultures[culture]!.use === 'free')

/** Everybody's food of a part, or null where somebody must miss some; `unsaid` where looking ahead might help. */
function answerByHand({ question, unit }: Search, part: Part, links: Links): PartAnswer | null | 'unsaid' {
  if (!mightFeed(question, part, links)) return null
  const { missed, taken } = fedByHand(question, part, links)
  if (missed <= 1e-12 * unit) return { minded: 0, taking: { taken: (c, e, day) => taken[day]![c]![e]!, left: () => 0 } }
  return part.cultures.length === 1 || missed > worthAProgram * unit ? null : 'unsaid'
}

/** The least that a part misses by these links; null where that would be more work than is left. */
async function answerBySolver(search: Search, { cultures, eaters }: Part, links: Links): Promise<PartAnswer | null> {
  const { question } = search
  if (search.rows > mostRows) return null
  const small = {
    ...question,
    cultures: cultures.map((culture) => question.cultures[culture]!),
    eaters: eaters.map((eater) => question.eaters[eater]!),
  }
  const costs = cultures.map((culture) => eaters.map((eater) => (links[culture]![eater] ? 0 : null)))
  const program = programOf(small, costs)
  search.rows += program.rows.length
  if (search.rows > mostRows) return null
  const { cost, amountOf } = await solve(program)
  return {
    minded: cost * program.unit,
    taking: {
      taken: (c, e, day) => amountOf(takenName(cultures.indexOf(c), eaters.indexOf(e), day)) * program.unit,
      left: (c, day) => amountOf(leftName(cultures.indexOf(c), day)) * program.unit,
    },
  }
}

/** The answers of all parts as one. */
function together(links: Links, answers: readonly PartAnswer[]): Taking {
  const parts = partsOf(links)
  const ofEater = (eater: number) => parts.findIndex(({ eaters }) => eaters.includes(eater))
  const ofCulture = (culture: number) => parts.findIndex(({ cultures }) => cultures.includes(culture))
  return {
    taken: (culture, eater, day) =>
      links[culture]![eater] ? answers[ofEater(eater)]!.taking.taken(culture, eater, day) : 0,
    left: (culture, day) => answers[ofCulture(culture)]?.taking.left(culture, day) ?? 0,
  }
}
