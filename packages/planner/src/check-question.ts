import { ArgumentError } from '@fryward/survival'
import type { DayGrowth, FoodQuestion, Future, PlanCulture, PlanEater } from './question.ts'

const mostDays = 42
const mostFutures = 1000

function assertWithin(argument: string, value: number, { from, to }: { from: number; to: number }): void {
  if (!(value >= from && value <= to)) throw new ArgumentError({ argument, value, allowed: `from ${from} to ${to}` })
}

const assertFrom0 = (argument: string, value: number): void => {
  if (!(value >= 0 && Number.isFinite(value)))
    throw new ArgumentError({ argument, value, allowed: 'a number from 0 up' })
}

function assertLength(argument: string, list: readonly unknown[], length: number): void {
  if (list.length !== length)
    throw new ArgumentError({ argument: `${argument}.length`, value: list.length, allowed: `${length}` })
}

function assertGrowth(argument: string, growth: readonly DayGrowth[], days: number): void {
  assertLength(argument, growth, days)
  for (const [day, { gain, crowding }] of growth.entries()) {
    assertFrom0(`${argument}[${day}].gain`, gain)
    assertFrom0(`${argument}[${day}].crowding`, crowding)
  }
}

function assertCulture(culture: PlanCulture, at: string, days: number): void {
  if (!(culture.volumeL > 0 && Number.isFinite(culture.volumeL)))
    throw new ArgumentError({ argument: `${at}.volumeL`, value: culture.volumeL, allowed: 'litres above 0' })
  assertFrom0(`${at}.animals`, culture.animals)
  assertFrom0(`${at}.floorAnimals`, culture.floorAnimals)
  assertFrom0(`${at}.firstDay`, culture.firstDay)
  assertWithin(`${at}.mostShare`, culture.mostShare, { from: 0, to: 1 })
  assertWithin(`${at}.goneShare`, culture.goneShare, { from: 0, to: 1 })
  if (culture.thinnedToAnimals !== null) assertFrom0(`${at}.thinnedToAnimals`, culture.thinnedToAnimals)
  assertGrowth(`${at}.growth`, culture.growth, days)
}

function assertWanted(argument: string, wanted: readonly number[], days: number): void {
  assertLength(argument, wanted, days)
  for (const [day, animals] of wanted.entries()) assertFrom0(`${argument}[${day}]`, animals)
}

function assertFuture(future: Future, at: string, { days, cultures, eaters }: FoodQuestion): void {
  assertLength(`${at}.cultures`, future.cultures, cultures.length)
  assertLength(`${at}.wanted`, future.wanted, eaters.length)
  for (const [index, { animals, growth }] of future.cultures.entries()) {
    assertFrom0(`${at}.cultures[${index}].animals`, animals)
    assertGrowth(`${at}.cultures[${index}].growth`, growth, days)
  }
  for (const [index, wanted] of future.wanted.entries()) assertWanted(`${at}.wanted[${index}]`, wanted, days)
}

function assertNamedOnce(argument: string, things: readonly { id: string }[]): void {
  const ids = new Set<string>()
  for (const { id } of things) {
    if (ids.has(id)) throw new ArgumentError({ argument, value: id, allowed: 'each id once' })
    ids.add(id)
  }
}

/** @throws ArgumentError naming what in a question cannot be, its value and what is allowed. */
export function assertQuestion(question: FoodQuestion): void {
  const { days, cultures, eaters, sievingLoss, futures = [] } = question
  if (!Number.isInteger(days)) throw new ArgumentError({ argument: 'days', value: days, allowed: 'a whole number' })
  assertWithin('days', days, { from: 1, to: mostDays })
  assertWithin('sievingLoss', sievingLoss, { from: 0, to: 0.9 })
  assertWithin('futures.length', futures.length, { from: 0, to: mostFutures })
  assertNamedOnce('cultures', cultures)
  assertNamedOnce('eaters', eaters)
  for (const [index, culture] of cultures.entries()) assertCulture(culture, `cultures[${index}]`, days)
  for (const [index, eater] of eaters.entries()) assertEater(eater, `eaters[${index}]`, days)
  for (const [index, future] of futures.entries()) assertFuture(future, `futures[${index}]`, question)
}

const assertEater = (eater: PlanEater, at: string, days: number): void =>
  assertWanted(`${at}.wanted`, eater.wanted, days)
