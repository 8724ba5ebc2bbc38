import type { Outcome } from '@fryward/shared'
import { factsOf, type RoomSnapshot, type SnapshotGroup } from '../snapshot.ts'

export type GroupNumbers = {
  arrived: number
  lost: number
  movedOn: number
  byOutcome: Record<Outcome, number>
  now: number | null
}

/** Fish of a group by the book: transfers in, less losses, moves and outcomes; a head count starts the book anew. */
export function groupNumbers(snapshot: RoomSnapshot, group: Pick<SnapshotGroup, 'id'>): GroupNumbers {
  const arrivals = snapshot.facts.flatMap((fact) =>
    fact.kind === 'transfer' && fact.data.toSubjectId === group.id ? [fact] : [],
  )
  const headCounts = factsOf(snapshot, 'count', group.id).filter((fact) => fact.data.of === 'juveniles')
  const losses = factsOf(snapshot, 'loss', group.id)
  const moves = factsOf(snapshot, 'transfer', group.id)
  const outcomes = factsOf(snapshot, 'outcome', group.id)
  const last = headCounts.at(-1)
  const sum = (facts: { at: string; data: { number: number } }[], after = '') =>
    facts.filter((fact) => fact.at > after).reduce((total, fact) => total + fact.data.number, 0)
  const base = last
    ? Math.round(last.data.animals.reduce((total, animals) => total + animals, 0) / last.data.animals.length)
    : arrivals.length > 0
      ? 0
      : null
  const since = last?.at ?? ''
  return {
    arrived: sum(arrivals),
    lost: sum(losses),
    movedOn: sum(moves),
    byOutcome: {
      placed: sum(outcomes.filter((fact) => fact.data.outcome === 'placed')),
      kept: sum(outcomes.filter((fact) => fact.data.outcome === 'kept')),
      culled: sum(outcomes.filter((fact) => fact.data.outcome === 'culled')),
    },
    now:
      base === null
        ? null
        : Math.max(0, base + sum(arrivals, since) - sum(losses, since) - sum(moves, since) - sum(outcomes, since)),
  }
}
