/*
 * Every figure of the survival review once more, from the raw facts of a room in UTC in which each clutch hatched into one
 * batch, moved on as a whole and was counted head by head: animal by animal, by textbook formulas, and with nothing of the
 * code that it is held against. Means to be slow and plain.
 */
import type { ReviewRoom } from '../review/review-room.ts'

const dayMs = 86_400_000
const dateOf = (at: string) => at.slice(0, 10)
const plus = (date: string, days: number) =>
  new Date(Date.parse(`${date}T12:00:00Z`) + days * dayMs).toISOString().slice(0, 10)
export const daysFrom = (a: string, b: string) => Math.round((Date.parse(b) - Date.parse(a)) / dayMs)

/** Last known to be alive at the end of a day of age; gone by the end of another, and when it is taken to have gone. */
export type Animal = { seenDay: number; goneDay: number; time: number; kind: 'dead' | 'placed' | 'culled' | 'alive' }

export type NaiveBrood = {
  clutchId: string
  pairId: string
  bornOn: string
  eggs: number
  animals: Animal[]
  missing: number
  now: number
  countedDays: number[]
  losses: Map<string, number>
  moved: { number: number; on: string } | null
  placed: { number: number; on: string | null }
  culledDays: number[]
  fedOn: string | null
  turnedOn: string | null
  tanks: string[]
  cultures: string[]
  foods: string[]
  artemiaDay: number | null
}

export function naiveBroods(room: ReviewRoom): NaiveBrood[] {
  return room.clutches.map(({ id, pairId }) => naiveBrood(room, { id, pairId }))
}

type Own = { batchId: string; vessels: Set<string>; bornOn: string }

function naiveBrood(room: ReviewRoom, { id, pairId }: { id: string; pairId: string }): NaiveBrood {
  const brood = begun(room, { id, pairId })
  const own = ownOf(room, id)
  const state = { inBatch: brood.animals.length, inGroup: 0, lastCount: 0, lastWord: 0 }
  for (let on = own.bornOn; on <= room.today; on = plus(on, 1)) liveDay(room, { brood, own, state, on })
  for (const animal of brood.animals) if (animal.kind === 'alive') animal.time = state.lastWord
  brood.now = state.inBatch + state.inGroup
  return brood
}

function ownOf(room: ReviewRoom, clutchId: string): Own {
  for (const fact of room.facts) {
    if (fact.kind !== 'hatch' || fact.subjectId !== clutchId || !fact.data.batchId) continue
    const batchId = fact.data.batchId
    const groups = room.facts.flatMap((each) =>
      each.kind === 'transfer' && each.subjectId === batchId ? [each.data.toSubjectId] : [],
    )
    return { batchId, vessels: new Set([batchId, ...groups]), bornOn: plus(fact.data.hatchedOn, 1) }
  }
  throw new Error('every clutch of these rooms hatched')
}

function begun(room: ReviewRoom, { id, pairId }: { id: string; pairId: string }): NaiveBrood {
  const { batchId, bornOn } = ownOf(room, id)
  let [eggs, larvae] = [0, 0]
  const losses = new Map<string, number>()
  let turnedOn: string | null = null
  for (const fact of room.facts) {
    if (fact.kind === 'spawning' && fact.subjectId === id) eggs = fact.data.eggs ?? 0
    if (fact.kind === 'hatch' && fact.subjectId === id) larvae = fact.data.larvae ?? 0
    if (fact.kind === 'loss' && fact.subjectId === id) add(losses, fact.data.cause, fact.data.number)
    if (fact.kind === 'observation' && fact.subjectId === batchId && fact.data.signs.includes('settled'))
      turnedOn ??= dateOf(fact.at)
  }
  const alive = (): Animal => ({ seenDay: 0, goneDay: Number.POSITIVE_INFINITY, time: 0, kind: 'alive' })
  return {
    ...{ clutchId: id, pairId, bornOn, eggs, losses, turnedOn, ...firstDays(room, { batchId, bornOn }) },
    animals: Array.from({ length: larvae }, alive),
    ...{ missing: 0, now: 0, countedDays: [0], moved: null, placed: { number: 0, on: null }, culledDays: [] },
  }
}

function firstDays(room: ReviewRoom, { batchId, bornOn }: { batchId: string; bornOn: string }) {
  const last = plus(bornOn, 5)
  const meals = room.meals.filter((meal) => meal.batchId === batchId)
  const early = meals.filter(({ firstAt }) => dateOf(firstAt) <= last)
  const animal = meals.filter(({ food }) => food === 'rotifers' || food === 'artemia')
  const foods = new Set(early.map(({ food }) => (food === 'rotifers' || food === 'artemia' ? food : 'green_water')))
  const stays = room.stays.filter(({ subjectId }) => subjectId === batchId)
  const tanks = new Set<string>()
  for (let on = bornOn; on <= last; on = plus(on, 1)) {
    const then = stays.filter(({ since }) => dateOf(since) <= on).at(-1)
    if (then) tanks.add(then.tankId)
  }
  return {
    fedOn: animal.map(({ firstAt }) => dateOf(firstAt)).sort()[0] ?? null,
    tanks: [...tanks],
    cultures: [
      ...new Set(early.flatMap(({ cultureId, food }) => (food === 'rotifers' && cultureId ? [cultureId] : []))),
    ],
    artemiaDay:
      early
        .filter(({ food }) => food === 'artemia')
        .map(({ firstAt }) => daysFrom(bornOn, dateOf(firstAt)))
        .sort((a, b) => a - b)[0] ?? null,
    foods: (['rotifers', 'artemia', 'green_water'] as const).filter((food) => foods.has(food)),
  }
}

function add(losses: Map<string, number>, cause: string | undefined, number: number): void {
  const name = (cause ?? '').toLowerCase()
  losses.set(name, (losses.get(name) ?? 0) + number)
}

type State = { inBatch: number; inGroup: number; lastCount: number; lastWord: number }
type Day = { brood: NaiveBrood; own: Own; state: State; on: string }

function liveDay(room: ReviewRoom, day: Day): void {
  const { brood, own, state, on } = day
  const age = daysFrom(own.bornOn, on)
  let isCounted = false
  for (const fact of room.facts) {
    if (dateOf(fact.at) !== on || !own.vessels.has(fact.subjectId)) continue
    const place = fact.subjectId === own.batchId ? 'inBatch' : 'inGroup'
    if (fact.kind === 'loss' || fact.kind === 'outcome') leave(day, { fact, place, age })
    if (fact.kind === 'count') [state[place], isCounted] = [fact.data.animals[0]!, true]
    if (fact.kind !== 'transfer') continue
    state.inBatch -= fact.data.number
    state.inGroup += fact.data.number
    brood.moved = { number: fact.data.number, on }
  }
  const end = room.batches.find(({ id }) => id === own.batchId)?.endedAt
  if (end && dateOf(end) === on) [state.inBatch, isCounted] = [0, true]
  if (isCounted) count(day, age)
}

type Leaving = { fact: ReviewRoom['facts'][number]; place: 'inBatch' | 'inGroup'; age: number }

function leave({ brood, state, on }: Day, { fact, place, age }: Leaving): void {
  if (fact.kind !== 'loss' && fact.kind !== 'outcome') return
  const kind = fact.kind === 'loss' ? 'dead' : fact.data.outcome === 'culled' ? 'culled' : 'placed'
  for (let left = fact.data.number; left > 0; left -= 1)
    Object.assign(brood.animals.find((animal) => animal.kind === 'alive')!, {
      seenDay: age - 1,
      goneDay: age,
      time: age,
      kind,
    })
  if (fact.kind === 'loss') add(brood.losses, fact.data.cause, fact.data.number)
  if (kind === 'placed') brood.placed = { number: brood.placed.number + fact.data.number, on }
  for (let left = fact.data.number; left > 0 && kind === 'culled'; left -= 1) brood.culledDays.push(age)
  state[place] -= fact.data.number
  state.lastWord = age
}

/** Whoever is not there is taken to have died half-way since everybody was last counted. */
function count({ brood, state }: Day, age: number): void {
  const there = state.inBatch + state.inGroup
  const alive = brood.animals.filter(({ kind }) => kind === 'alive')
  for (const animal of alive.slice(there)) {
    brood.missing += 1
    Object.assign(animal, { seenDay: state.lastCount, goneDay: age, time: (state.lastCount + age) / 2, kind: 'dead' })
  }
  for (const animal of alive.slice(0, there)) animal.seenDay = age
  if (state.lastCount !== age) brood.countedDays.push(age)
  state.lastCount = age
  state.lastWord = age
}

/** Alive at the end of a day of age: at least those who were seen later, at most those who were not gone by then. */
export const aliveOn = ({ animals }: NaiveBrood, age: number) => ({
  atLeast: animals.filter(({ seenDay, goneDay }) => seenDay >= age && goneDay > age).length,
  atMost: animals.filter(({ goneDay }) => goneDay > age).length,
})
