import type { FeederCosts } from './feeder-costs.ts'
import { chords, goneOf, grownByChords, mayGive, mostOf } from './growth.ts'
import type { FoodQuestion, PlanCulture } from './question.ts'

/**
 * How much more an animal short counts than one short a day later, within the first two weeks and after them. Larvae that
 * starve today are lost, those that may starve in three weeks can be helped: so it is less today only where that saves half
 * as much again tomorrow, which a culture seldom grows. common practice
 */
const SOON = { days: 14, counts: 1.5 }
const LATER_COUNTS = 1.1
/** Of a shortfall on the last day, for an animal out of a culture that is used only when short. */
const WHEN_SHORT_COSTS = 0.05

type Variable = { name: string; cost: number; from: number; to: number }
type Term = readonly [name: string, factor: number]
/** The terms add up to at most, or exactly, `bound`. */
type Row = { terms: Term[]; way: '<=' | '='; bound: number }

/** A linear program to minimise; animals are counted in `unit`s, so that numbers stay near 1. */
export type Program = { variables: Variable[]; rows: Row[]; unit: number }

export const takenName = (culture: number, eater: number, day: number) => `x_${culture}_${eater}_${day}`
export const leftName = (culture: number, day: number) => `r_${culture}_${day}`
const shortName = (eater: number, day: number) => `s_${eater}_${day}`
const morningName = (culture: number, day: number) => `n_${culture}_${day}`

/** What an animal short on a day counts, with one on the last day as 1. */
export function dayWeight(day: number, days: number): number {
  const soon = Math.max(0, Math.min(SOON.days, days - 1) - day)
  return SOON.counts ** soon * LATER_COUNTS ** (days - 1 - day - soon)
}

type Stock = { question: FoodQuestion; costs: FeederCosts; culture: number; morning: readonly number[] }

/** Who takes how much from where on each day, at these costs of feeding somebody from somewhere. */
export function programOf(question: FoodQuestion, costs: FeederCosts): Program {
  const program: Program = { variables: [], rows: [], unit: unitOf(question) }
  for (const [culture, each] of question.cultures.entries())
    addCulture(program, { question, costs, culture, morning: uneaten(each) })
  addEaters(program, question)
  return program
}

/** The morning stock of each day when nobody eats: no answer has more, and taking nothing is always one. */
function uneaten(culture: PlanCulture): number[] {
  const mornings: number[] = []
  let animals = culture.animals
  for (const [day, growth] of culture.growth.entries()) {
    mornings.push(animals)
    animals = grownByChords(mostLeft(culture, { animals, day }), growth)
  }
  return mornings
}

/** As thinned; that more is left where thinning may not go so far is a reserve that no answer counts on. */
function mostLeft(culture: PlanCulture, stock: { animals: number; day: number }): number {
  const left = stock.animals - goneOf(culture, stock)
  return culture.thinnedToAnimals === null ? left : Math.min(left, culture.thinnedToAnimals)
}

/** Mean of a day's food over the days on which anybody eats; 1 where nobody does. */
function unitOf({ days, eaters }: FoodQuestion): number {
  const daily = Array.from({ length: days }, (_, day) => eaters.reduce((sum, { wanted }) => sum + wanted[day]!, 0))
  const fed = daily.filter((animals) => animals > 0)
  return fed.length > 0 ? fed.reduce((sum, animals) => sum + animals, 0) / fed.length : 1
}

/** True on days when a harvest can leave the floor behind; every plan can hold it then, by taking nothing before. */
const isHarvestable = ({ question, culture, morning }: Stock, day: number): boolean =>
  mayGive(question.cultures[culture]!, day) && mostOf(question.cultures[culture]!, { animals: morning[day]!, day }) > 0

/** Eaters that a culture may feed on a day. */
function mouthsOf(stock: Stock, day: number): number[] {
  const { question, costs, culture } = stock
  if (!isHarvestable(stock, day)) return []
  return question.eaters.flatMap(({ wanted }, eater) =>
    costs[culture]![eater] !== null && wanted[day]! > 0 ? [eater] : [],
  )
}

/** The last day on which anybody may eat from it: what comes after does not matter. -1 where nobody ever may. */
function lastDayEaten(stock: Stock): number {
  let day = stock.question.days - 1
  while (day >= 0 && mouthsOf(stock, day).length === 0) day -= 1
  return day
}

function addCulture(program: Program, stock: Stock): void {
  const { question, culture } = stock
  const lastDay = lastDayEaten(stock)
  for (let day = 0; day <= lastDay; day += 1) {
    const left = addDay(program, { ...stock, day })
    if (day === lastDay) break
    const next = morningName(culture, day + 1)
    for (const { slope, offset } of chords(question.cultures[culture]!.growth[day]!, left)) {
      const terms: Term[] = [
        [next, 1],
        [leftName(culture, day), -slope],
      ]
      program.rows.push({ terms, way: '<=', bound: offset / program.unit })
    }
  }
}

/** A culture's stock and harvest on one day; gives the range of animals that may be left. */
function addDay({ variables, rows, unit }: Program, stock: Stock & { day: number }): { from: number; to: number } {
  const { question, culture, day } = stock
  const { mostShare, floorAnimals, use } = question.cultures[culture]!
  const morning = stock.morning[day]!
  const gone = goneOf(question.cultures[culture]!, { animals: morning, day }) / unit
  const to = mostLeft(question.cultures[culture]!, { animals: morning, day })
  const from = isHarvestable(stock, day) ? Math.min(floorAnimals, to) : 0
  const n = morningName(culture, day)
  variables.push({ name: n, cost: 0, from: day === 0 ? morning / unit : 0, to: morning / unit })
  variables.push({ name: leftName(culture, day), cost: 0, from: from / unit, to: to / unit })
  const taken = mouthsOf(stock, day).map((eater): Term => {
    const name = takenName(culture, eater, day)
    const cost = (use === 'when-short' ? WHEN_SHORT_COSTS : 0) + stock.costs[culture]![eater]!
    variables.push({ name, cost, from: 0, to: morning / unit })
    return [name, 1]
  })
  rows.push({ terms: [[leftName(culture, day), 1], ...taken, [n, -1]], way: '<=', bound: -gone })
  if (taken.length > 0) rows.push({ terms: [...taken, [n, -mostShare]], way: '<=', bound: -gone })
  return { from, to }
}

function addEaters({ variables, rows, unit }: Program, { eaters, cultures, days, sievingLoss }: FoodQuestion): void {
  const known = new Set(variables.map(({ name }) => name))
  for (const [eater, { wanted }] of eaters.entries())
    for (const [day, animals] of wanted.entries()) {
      if (animals <= 0) continue
      const names = cultures.map((_, culture) => takenName(culture, eater, day)).filter((name) => known.has(name))
      const short = shortName(eater, day)
      variables.push({ name: short, cost: dayWeight(day, days), from: 0, to: animals / unit })
      const got = names.map((name): Term => [name, 1 - sievingLoss])
      rows.push({ terms: [...got, [short, 1]], way: '=', bound: animals / unit })
    }
}
