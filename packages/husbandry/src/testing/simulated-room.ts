import { type Random, seededRandom } from '@fryward/live-feed'
import { type CureChange, defaultRounds, type Round } from '@fryward/shared'
import { addMinutes } from '../calendar/elapsed.ts'
import { addDays } from '../calendar/husbandry-day.ts'
import { draftDay } from '../engine/draft-day.ts'
import type { Fact } from '../facts/fact.ts'
import { findRule, rules } from '../rules/index.ts'
import type { RoomSnapshot, RuleSetting } from '../snapshot/room-snapshot.ts'
import { type Eye, liveTask, typedValues } from './live-a-day.ts'
import { SnapshotBuilder } from './snapshot-builder.ts'

const firstDay = '2026-01-05'
const signedShare = 0.85
// As the loader reads them: two months of everything, and the facts that a life stands on whole.
const windowDays = 60
const kept = ['spawning', 'hatch', 'inoculation']
// A small room passes its young on as they grow; the larger one until they are placed.
const groupDays = { small: 30, larger: 45 } as const

/** How many really swim in each culture: 0.35 a day up to 800 per mL, thinned by what the facts took out. */
class Waters {
  readonly density = new Map<string, number>()
  /** Ammonia was read in the round that is walked. */
  hasAlarm = false
  readonly random: Random
  readonly room: SnapshotBuilder

  constructor(room: SnapshotBuilder, random: Random) {
    this.room = room
    this.random = random
    for (const { id, kind } of room.snapshot.cultures) if (kind === 'rotifer') this.density.set(id, 63)
  }

  takeOut(): void {
    for (const fact of this.room.fresh.splice(0)) this.apply(fact)
  }

  private apply(fact: Fact): void {
    const culture = this.room.snapshot.cultures.find(({ id }) => id === fact.subjectId)
    const density = this.density.get(fact.subjectId)
    if (!culture || density === undefined) return
    if (fact.kind === 'harvest') this.density.set(culture.id, density * (1 - fact.data.volumeL / culture.volumeL))
    if (fact.kind === 'care' && fact.data.act === 'restart_culture') this.density.set(culture.id, 0)
    if (fact.kind === 'inoculation')
      this.density.set(
        culture.id,
        (this.density.get(culture.id) ?? 0) + (fact.data.animals ?? 0) / (culture.volumeL * 1000),
      )
  }

  growADay(): void {
    for (const [id, density] of this.density) {
      const isCrash = this.random.uniform() < 0.004
      this.density.set(id, isCrash ? density * 0.03 : density * Math.exp(0.35 * (1 - density / 800)))
    }
  }
}

type Size = {
  days: number
  rounds: Round[]
  pairs: string[]
  nurseries: number
  hatchers: number
  hasEverything: boolean
}

// Ids and times of day as rooms have them.
const twoRounds: Round[] = [
  { id: 'morning', name: 'Morning', at: '07:00' },
  { id: 'evening', name: 'Evening', at: '18:00' },
]
export const larger: Size = {
  days: 280,
  rounds: twoRounds,
  pairs: ['amphiprion-ocellaris', 'amphiprion-percula'],
  nurseries: 4,
  hatchers: 2,
  hasEverything: true,
}
/** Three pairs, three rotifer cultures, room for two batches, over three rounds. Half a year shows how long its lists are. */
export const small: Size = {
  days: 183,
  rounds: defaultRounds,
  pairs: ['amphiprion-ocellaris', 'amphiprion-percula', 'amphiprion-clarkii'],
  nurseries: 2,
  hatchers: 1,
  hasEverything: false,
}

function openedRoom({ rounds, pairs, nurseries, hatchers, hasEverything }: Size): SnapshotBuilder {
  const room = new SnapshotBuilder({ rounds })
  room.concentrate({ name: 'the bottle', openedOn: '2026-01-01' })
  for (const [index, isBackup] of [false, false, true].entries()) {
    const culture = room.culture({ startedAt: `${firstDay}T06:00:00.000Z`, isBackup, hasFilter: index === 0 })
    room.fact('inoculation', culture.id, culture.startedAt, { densityPerMl: 63 })
  }
  const startedAt = `${firstDay}T06:00:00.000Z`
  if (hasEverything) {
    room.culture({ startedAt, name: 'A1', kind: 'microalgae', strain: null, volumeL: 10 })
    room.culture({ startedAt, name: 'C1', kind: 'copepod', strain: null, volumeL: 10 })
  }
  for (let hatcher = 1; hatcher <= hatchers; hatcher += 1)
    room.culture({
      startedAt,
      name: `H${hatcher}`,
      kind: 'artemia_hatch',
      strain: null,
      volumeL: 2,
      temperatureC: 28,
      salinity: 30,
    })
  for (let tank = 0; tank < nurseries; tank += 1)
    room.tank({ name: `Nursery ${tank + 1}`, volumeL: 20, lightHours: null })
  room.tank({ name: 'Grow-out', kind: 'grow_out', volumeL: 150 })
  if (hasEverything) room.tank({ name: 'Quarantine', kind: 'quarantine', volumeL: 40 })
  for (const species of pairs) room.pair({ species, formedOn: '2026-01-01' })
  return room
}

/** The larger of the two rooms, which has quarantine, copepods and algae too. */
const hasEverything = ({ snapshot }: SnapshotBuilder): boolean =>
  snapshot.tanks.some(({ kind }) => kind === 'quarantine')

/** What its people change of the rules for some of its days, and why. */
const changes: {
  ruleId: string
  fromDay: number
  days: number
  setting: Partial<RuleSetting>
  isForLarger?: boolean
}[] = [
  // Rotifers are put in the cold against a weekend away.
  { ruleId: 'rotifer-harvest', fromDay: 60, days: 5, setting: { parameters: { restGoesTo: 'chilled_reserve' } } },
  // Looked at by a guest, pairs fed by a feeder, cultures by a pump: what goes with these tasks then stands alone.
  { ruleId: 'larval-look', fromDay: 100, days: 10, setting: { isOn: false } },
  { ruleId: 'pair-feed', fromDay: 150, days: 6, setting: { isOn: false } },
  { ruleId: 'pair-feed', fromDay: 205, days: 25, setting: { isOn: false }, isForLarger: true },
  { ruleId: 'rotifer-feed', fromDay: 175, days: 3, setting: { isOn: false } },
  { ruleId: 'larval-artemia-feed', fromDay: 185, days: 6, setting: { isOn: false } },
]
const backupFromDay = 21
const arrivalDay = 40
const fishInABag = { act: 'fish_arrived', number: 2, litres: 1.5 } as const

/** The day's settings: rules changed and changed back, and for the first three weeks no culture set aside as backup. */
function arrange(room: SnapshotBuilder, day: number): void {
  for (const { ruleId, fromDay, days, setting, isForLarger = false } of changes) {
    if (isForLarger && !hasEverything(room)) continue
    if (day === fromDay) room.setting(ruleId, setting)
    if (day === fromDay + days) delete room.snapshot.ruleSettings[ruleId]
  }
  const quarantine = room.snapshot.tanks.find(({ kind }) => kind === 'quarantine')
  if (quarantine && day === arrivalDay)
    room.fact('care', quarantine.id, `${addDays(firstDay, day)}T15:00:00.000Z`, fishInABag)
  if (quarantine) chooseCures(room, day)
  if (quarantine && day === pumpStandsOn) standStill(room, addDays(firstDay, day))
  // A vessel leaked: it is clean again, and nothing swims in it.
  if (quarantine && day === leakedOn)
    room.fact('care', room.snapshot.cultures[1]!.id, `${addDays(firstDay, day)}T19:30:00.000Z`, {
      act: 'restart_culture',
    })
  const third = room.snapshot.cultures[2]
  if (third) third.isBackup = day >= backupFromDay
}

const leakedOn = 231
const pumpStandsOn = 236
// Half of what such water holds. common practice
const oxygenMgPerL = 3.3

/** A pump stands over night, and somebody measures what the fish have left. */
function standStill(room: SnapshotBuilder, date: string): void {
  const { tankId } = room.snapshot.pairs[0]!
  room.fact('water_test', tankId, `${date}T05:30:00.000Z`, { oxygenMgPerL, temperatureC: 26 })
}

const chilledFrom = 61
const chilledUntil = 73
const curesFrom = 120
const curesGoneBy = 150
const fewKeptUntil = 240

/** Once food is short: a culture is started, rotifers are bought in, and fewer larvae are kept; later that is past. */
function chooseCures(room: SnapshotBuilder, day: number): void {
  const date = addDays(firstDay, day)
  const { snapshot } = room
  const [first] = snapshot.cultures
  const choose = (change: CureChange) =>
    room.fact('cure', snapshot.room.id, `${date}T05:00:00.000Z`, { change, planMadeAt: `${date}T05:00:00.000Z` })
  const batches = snapshot.batches.map(({ id }) => ({ batchId: id, share: 1, from: [], chilled: 20_000 }))
  // What was put in the cold against the weekend is fed after it.
  const isFedChilled = day >= chilledFrom && day < chilledUntil
  snapshot.foodPlan = isFedChilled ? { madeAt: `${date}T05:00:00.000Z`, days: [{ date, batches, cultures: [] }] } : null
  if (day === curesFrom && first) {
    choose({ kind: 'start_culture', cultureId: first.id, volumeL: 5, animals: 3e5, onDate: addDays(date, 1) })
    choose({ kind: 'buy_in', animals: 1e6, onDate: addDays(date, 3) })
  }
  if (day >= curesFrom && day < fewKeptUntil)
    for (const { id, hatchedOn } of snapshot.batches)
      if (hatchedOn === addDays(date, -2)) choose({ kind: 'keep_larvae', subjectId: id, larvae: 20 })
  if (day === curesGoneBy)
    snapshot.cultures = snapshot.cultures.filter(({ startedAt }) => startedAt < `${addDays(firstDay, curesFrom)}T00:00`)
}

/** The snapshot as it is loaded on a date. */
function loaded(room: SnapshotBuilder, date: string): RoomSnapshot {
  const since = `${addDays(date, -windowDays)}T00:00:00.000Z`
  const snapshot = room.build()
  return { ...snapshot, facts: snapshot.facts.filter((fact) => fact.at >= since || kept.includes(fact.kind)) }
}

/** What no rule will look at any more leaves the test's own book, as it leaves what is loaded. Batches that have moved on and clutches that are over are closed on their pages, as people do. */
function close(room: SnapshotBuilder, date: string): void {
  const { snapshot } = room
  // Not before the next day, when somebody has looked whether any are left.
  const moved = new Set(
    snapshot.groups.filter(({ settledOn }) => settledOn < date).map(({ fromBatchId }) => fromBatchId),
  )
  snapshot.batches = snapshot.batches.filter(({ id, hatchedOn }) => !moved.has(id) && hatchedOn > addDays(date, -50))
  snapshot.groups = snapshot.groups.filter(
    ({ settledOn }) => settledOn > addDays(date, -groupDays[hasEverything(room) ? 'larger' : 'small']),
  )
  const since = `${addDays(date, -windowDays)}T00:00:00.000Z`
  snapshot.facts = snapshot.facts.filter((fact) => fact.at >= since || kept.includes(fact.kind))
  snapshot.clutches = snapshot.clutches.filter(({ spawnedAt }) => spawnedAt.slice(0, 10) > addDays(date, -90))
}

type Walk = { tasks: number; ruleIds: string[] }

function walkADay(room: SnapshotBuilder, waters: Waters, date: string): Walk {
  const random = waters.random
  const ruleIds: string[] = []
  const done = new Set<string>()
  for (const round of room.snapshot.room.rounds) {
    const walk = (isAgain: boolean) => {
      const { drafts } = draftDay({ snapshot: loaded(room, date), date, rules })
      for (const draft of drafts.filter(({ roundId, key }) => roundId === round.id && !(isAgain && done.has(key)))) {
        if (!done.has(draft.key)) ruleIds.push(draft.ruleId)
        done.add(draft.key)
        if (random.uniform() > signedShare) continue
        const rule = findRule(draft.ruleId)
        if (!rule) throw new Error(`No rule ${draft.ruleId}`)
        const at = addMinutes(draft.dueAt, Math.round(random.uniform() * 50) + 1)
        liveTask(room, { rule, draft, values: typedValues(draft, random, eyeOf(waters)), at })
        waters.takeOut()
      }
    }
    walk(false)
    // What was read out of the ordinary is acted on in the same round.
    if (waters.hasAlarm) walk(true)
    waters.hasAlarm = false
  }
  return { tasks: done.size, ruleIds }
}

// Ammonia of an overfed tank, and a clutch that fungus has got into. common practice
const highAmmoniaNMgPerL = 1.5
const shareOfEggsLost = 0.2
const badDays = 0.04

/** How many swim where a count is taken; and on a few bad days what a careful room sees perhaps once in a month. */
function eyeOf(waters: Waters): Eye {
  const isBad = waters.random.uniform() < badDays
  return {
    densityPerMl: (draft) => waters.density.get(draft.subjectId) ?? 4 + 4 * waters.random.uniform(),
    // A room raises what it has tanks for, and leaves the rest with their parents.
    answer: ({ ruleId }, field) => {
      // The third culture is set aside as backup after three weeks: until then a new one has to wait.
      if (ruleId === 'rotifer-backup-wanted' && field.name === 'answer') return 'later'
      if (ruleId === 'larval-chilled-feed' && field.name === 'swim') return 'most'
      if (ruleId !== 'clutch-morning-after' || field.type !== 'choice' || field.name !== 'tank') return undefined
      return field.help?.includes('where the eggs were, when') ? 'left' : field.choices[0]?.value
    },
    unusual: ({ ruleId }, { name, maximum }) => {
      if (!isBad) return undefined
      if (name === 'totalAmmoniaNMgPerL') {
        waters.hasAlarm = true
        return highAmmoniaNMgPerL
      }
      return ruleId === 'clutch-look' && name === 'dead' ? Math.round(maximum * shareOfEggsLost) : undefined
    },
  }
}

const quantile = (sorted: number[], share: number): number => sorted[Math.floor((sorted.length - 1) * share)] ?? 0
const sorted = (values: number[]): number[] => [...values].sort((a, b) => a - b)
export const median = (values: number[]): number => quantile(sorted(values), 0.5)

type Lived = {
  asked: Map<string, number>
  ordinary: number[]
  sizes: number[]
  silent: string[]
  room: SnapshotBuilder
  batches: number
}

export function liveThrough(size: Size): Lived {
  const room = openedRoom(size)
  const waters = new Waters(room, seededRandom(20_260_105))
  const sizes: number[] = []
  const asked = new Map<string, number>()
  const ordinary: number[] = []
  let batches = 0
  for (let day = 0; day < size.days; day += 1) {
    const date = addDays(firstDay, day)
    arrange(room, day)
    const { tasks, ruleIds } = walkADay(room, waters, date)
    for (const ruleId of ruleIds) asked.set(ruleId, (asked.get(ruleId) ?? 0) + 1)
    sizes.push(tasks)
    batches += room.snapshot.batches.length
    if (room.snapshot.batches.length === 2 && room.snapshot.groups.length <= 2) ordinary.push(tasks)
    close(room, date)
    waters.growADay()
  }
  const silent = rules.filter(({ id, isOnByDefault }) => isOnByDefault && !asked.has(id)).map(({ id }) => id)
  return { asked, ordinary, sizes, silent, room, batches: batches / size.days }
}

/** Prints how long the lists were; returns the reader of their quantiles. */
export function spread(
  name: string,
  { asked, ordinary, sizes, silent, room, batches }: Lived,
): (share: number) => number {
  const inOrder = sorted(sizes)
  const days = sizes.length
  const at = (share: number) => quantile(inOrder, share)
  const most = [...asked].sort(([, a], [, b]) => b - a).slice(0, 12)
  // biome-ignore lint/suspicious/noConsole: the spread of list sizes is what this test is run for
  console.info(
    `${name}, tasks a day over ${days} days: least ${at(0)}, 10 % ${at(0.1)}, median ${at(0.5)}, 90 % ${at(0.9)}, most ${at(1)};`,
    `median ${median(ordinary)} on the ${ordinary.length} days with two batches and at most two groups;`,
    `${batches.toFixed(1)} batches on a day, ${room.snapshot.groups.length} groups at the end;`,
    `most of them ${most.map(([ruleId, times]) => `${ruleId} ${(times / days).toFixed(1)}`).join(', ')};`,
    `${lives(room, 'spawning')} spawnings, ${lives(room, 'hatch')} hatches; rules that never asked: ${silent.join(', ') || 'none'}`,
  )
  return at
}
export const lives = (room: SnapshotBuilder, kind: string) =>
  room.snapshot.facts.filter((fact) => fact.kind === kind).length
