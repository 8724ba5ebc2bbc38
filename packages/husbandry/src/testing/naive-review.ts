/*
 * The figures of a review once more, from the raw facts, by the slowest way there is and with nothing of the code that it
 * is held against: every vessel of the room is lived through, fact by fact, and what is in it is known by its origins.
 */
import type { ReviewRoom } from '../review/review-room.ts'

export type NaiveRow = {
  clutchIds: string[]
  laid: number | null
  hatched: number | null
  settled: number
  placed: number
  culled: number
  dead: number
  mixedOrMoved: number
  /** Missing at counts, by a balance of the whole brood that starts anew with each count. */
  missing: number
  balance: number | null
  numberNow: number | null
  /** By date: what the book says at the end of it, and whether somebody counted. */
  days: Map<string, { number: number | null; isCounted: boolean }>
}

type Vessel = { origins: Set<string>; number: number | null; hasBegun: boolean; isMixed: boolean }
const dayMs = 86_400_000
const nextDate = (date: string) => new Date(Date.parse(`${date}T12:00:00Z`) + dayMs).toISOString().slice(0, 10)

/** Origins by clutch: all clutches that ever hatched into one batch carry one name. */
function nameOrigins(room: ReviewRoom): Map<string, string> {
  const name = new Map(room.clutches.map(({ id }) => [id, id]))
  for (let pass = 0; pass < room.clutches.length; pass += 1)
    for (const batch of room.batches) {
      const into = room.facts.flatMap((fact) =>
        fact.kind === 'hatch' && fact.data.batchId === batch.id && name.has(fact.subjectId) ? [fact.subjectId] : [],
      )
      const smallest = into.map((id) => name.get(id)!).sort()[0]
      for (const id of into) name.set(id, smallest!)
    }
  return name
}

/** All broods of a room in UTC; facts come in order of time. */
export function naiveReview(room: ReviewRoom): NaiveRow[] {
  const origin = nameOrigins(room)
  const rows = new Map<string, NaiveRow>()
  for (const [clutchId, name] of origin) {
    const row: NaiveRow = rows.get(name) ?? {
      ...{ clutchIds: [], laid: 0, hatched: null, settled: 0, placed: 0, culled: 0, dead: 0, mixedOrMoved: 0 },
      ...{ missing: 0, balance: null, numberNow: null, days: new Map() },
    }
    const spawning = room.facts.find((fact) => fact.kind === 'spawning' && fact.subjectId === clutchId)
    const eggs = spawning?.kind === 'spawning' ? spawning.data.eggs : undefined
    row.laid = row.laid === null || eggs === undefined ? null : row.laid + eggs
    row.clutchIds.push(clutchId)
    rows.set(name, row)
  }
  liveThrough(room, { origin, rows })
  return [...rows.values()]
}

type Lived = { origin: Map<string, string>; rows: Map<string, NaiveRow> }

function liveThrough(room: ReviewRoom, { origin, rows }: Lived): void {
  const vessels = new Map<string, Vessel>()
  for (const { id } of [...room.batches, ...room.groups])
    vessels.set(id, { origins: new Set(), number: null, hasBegun: false, isMixed: false })
  const rowOf = (vessel: Vessel | undefined): NaiveRow | undefined =>
    vessel && !vessel.isMixed ? rows.get([...vessel.origins][0] ?? '') : undefined
  const counted = new Set<string>()
  const leave = (row: NaiveRow, number: number) => {
    if (row.balance !== null) row.balance = Math.max(0, row.balance - number)
  }
  const first = room.facts[0]?.at.slice(0, 10) ?? room.today
  for (let date = first; date <= room.today; date = nextDate(date)) {
    for (const fact of room.facts.filter(({ at }) => at.slice(0, 10) === date)) {
      const vessel = vessels.get(fact.subjectId)
      if (fact.kind === 'hatch' && fact.data.batchId !== undefined) {
        const into = vessels.get(fact.data.batchId)!
        into.origins.add(origin.get(fact.subjectId) ?? `bought ${fact.subjectId}`)
        into.hasBegun = true
        const row = rowOf(into)
        if (fact.data.larvae !== undefined) into.number = (into.number ?? 0) + fact.data.larvae
        if (row && fact.data.larvae !== undefined) {
          row.hatched = (row.hatched ?? 0) + fact.data.larvae
          row.balance = (row.balance ?? 0) + fact.data.larvae
          counted.add(`${[...into.origins][0]} ${date}`)
        }
      }
      if (!vessel) continue
      if (fact.kind === 'loss' || fact.kind === 'outcome') {
        const row = rowOf(vessel)
        const field = fact.kind === 'loss' ? 'dead' : fact.data.outcome === 'culled' ? 'culled' : 'placed'
        if (row) {
          row[field] += fact.data.number
          leave(row, fact.data.number)
        }
        if (vessel.number !== null) vessel.number = Math.max(0, vessel.number - fact.data.number)
      }
      if (fact.kind === 'count') {
        const { animals } = fact.data
        vessel.number = animals.reduce((sum, each) => sum + each, 0) / animals.length
        if (rowOf(vessel)) counted.add(`${[...vessel.origins][0]} ${date}`)
      }
      if (fact.kind !== 'transfer') continue
      const to = vessels.get(fact.data.toSubjectId)
      const row = rowOf(vessel)
      const isToGroup = room.groups.some(({ id }) => id === fact.data.toSubjectId)
      const isFromBatch = room.batches.some(({ id }) => id === fact.subjectId)
      if (row && isToGroup && isFromBatch) row.settled += fact.data.number
      if (vessel.number !== null) vessel.number = Math.max(0, vessel.number - fact.data.number)
      if (!to) {
        if (row) {
          row.mixedOrMoved += fact.data.number
          leave(row, fact.data.number)
        }
        continue
      }
      const before = { row: rowOf(to), number: to.number }
      for (const each of vessel.isMixed ? ['others'] : vessel.origins) to.origins.add(each)
      const becomesMixed = to.origins.size > 1 && !to.isMixed
      if (becomesMixed) to.isMixed = true
      if (becomesMixed && before.row) {
        before.row.mixedOrMoved += Math.round(before.number ?? 0)
        leave(before.row, Math.round(before.number ?? 0))
      }
      if (to.isMixed && row) {
        row.mixedOrMoved += fact.data.number
        leave(row, fact.data.number)
      }
      to.number = to.number === null ? (to.hasBegun ? null : fact.data.number) : to.number + fact.data.number
      to.hasBegun = true
    }
    for (const { id, endedAt } of [...room.batches, ...room.groups]) {
      const vessel = vessels.get(id)!
      if (endedAt?.slice(0, 10) !== date) continue
      vessel.number = 0
      if (rowOf(vessel)) counted.add(`${[...vessel.origins][0]} ${date}`)
    }
    for (const [name, row] of rows) {
      const held = [...vessels.values()].filter((vessel) => vessel.origins.has(name))
      const own = held.filter((vessel) => !vessel.isMixed)
      const isKnown = held.length > 0 && own.every(({ number }) => number !== null)
      const number = isKnown ? own.reduce((sum, vessel) => sum + Math.round(vessel.number ?? 0), 0) : null
      row.days.set(date, { number, isCounted: counted.has(`${name} ${date}`) })
      row.numberNow = number
      if (number === null || !counted.has(`${name} ${date}`)) continue
      row.missing += Math.max(0, (row.balance ?? number) - number)
      row.balance = number
    }
  }
}
