import type { FactRow, SnapshotRows } from '@fryward/store'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { windowStart } from './fact-window.ts'
import { advanceState, openState, slideState } from './room-state.ts'

/** Evenly drawn: fc.double draws bit patterns, nearly all of them next to 0 where that is allowed. */
const between = (min: number, max: number) => fc.nat(1e6).map((n) => min + ((max - min) * n) / 1e6)

const now = '2026-03-10T12:00:00.000Z'
const dayMs = 86_400_000
const idOf = (kind: string, number: number) => `${kind}-${String(number).padStart(4, '0')}`

/** All that was ever written in a room: facts with the revision that wrote and the one that struck them, ends of things. */
type Written = {
  facts: { row: FactRow; revision: number; struckIn: number | null }[]
  endsIn: Map<string, number>
}

const fact = fc.record({
  kind: fc.constantFrom('count', 'loss', 'hatch', 'transfer', 'water_test', 'spawning'),
  about: fc.nat(3),
  into: fc.nat(3),
  daysAgo: between(0, 130),
  revision: fc.integer({ min: 1, max: 6 }),
  struckAfter: fc.option(fc.integer({ min: 1, max: 5 }), { nil: null }),
})
const happened = fc.record({
  facts: fc.array(fact, { maxLength: 40 }),
  ends: fc.array(fc.tuple(fc.constantFrom('batch', 'group', 'pair'), fc.nat(3), fc.integer({ min: 1, max: 6 })), {
    maxLength: 5,
  }),
})
type Happened = typeof happened extends fc.Arbitrary<infer T> ? T : never

function written({ facts, ends }: Happened): Written {
  const rows = facts.map(({ kind, about, into, daysAgo, revision, struckAfter }, index) => {
    const subjectId = kind === 'spawning' ? idOf('clutch', about) : idOf('batch', about)
    const data =
      kind === 'hatch'
        ? { hatchedOn: '2026-03-01', batchId: idOf('batch', into) }
        : kind === 'transfer'
          ? { number: 3, toSubjectId: idOf('group', into) }
          : { of: index % 2 === 0 ? 'larvae' : 'culture', animals: [5], number: 1 }
    const atMs = Date.parse(now) - Math.round(daysAgo * dayMs)
    const row: FactRow = [idOf('fact', index), kind, subjectId, atMs, null, null, data]
    return { row, revision, struckIn: struckAfter === null ? null : revision + struckAfter }
  })
  return { facts: rows, endsIn: new Map(ends.map(([kind, which, revision]) => [idOf(kind, which), revision])) }
}

/** What the database answers at a revision: everything, or what is new since another. */
function rowsAt({ facts, endsIn }: Written, at: number, after: number | null): SnapshotRows {
  const isStanding = (struckIn: number | null) => struckIn === null || struckIn > at
  const named = (kind: string) =>
    [0, 1, 2, 3]
      .map((number) => ({ id: idOf(kind, number), name: idOf(kind, number) }))
      .filter(({ id }) => (endsIn.get(id) ?? Number.POSITIVE_INFINITY) > at)
  const inTank = { species: 'amphiprion-ocellaris', tankId: 'tank-0000' }
  const days = ['2026-03-01T12:00:00.000Z', '2025-12-01T12:00:00.000Z', '2025-11-01T12:00:00.000Z', now]
  return {
    room: {
      ...{ id: 'room-0000', name: 'Room', timeZone: 'UTC', units: 'metric', lightsOnAt: '07:00', lightsOffAt: '19:00' },
      ...{ rounds: [{ id: 'morning', name: 'Morning', at: '07:00' }], salinity: 35, temperatureC: 26 },
    },
    revision: at,
    ...{ tanks: [], cultures: [], concentrates: [], feedLinks: [], foodPlans: [], ruleChanges: [], people: {} },
    pairs: named('pair').map((pair) => ({ ...pair, ...inTank, nestSite: '', formedOn: null, isResting: false })),
    clutches: days.map((spawnedAt, number) => ({
      ...{ id: idOf('clutch', number), name: idOf('clutch', number), pairId: idOf('pair', number), ...inTank },
      ...{ intent: 'raise_all', spawnedAt },
    })),
    batches: named('batch').map((batch) => ({ ...batch, ...inTank, hatchedOn: '2026-03-01', clutchIds: [] })),
    groups: named('group').map((group) => ({
      ...group,
      ...inTank,
      fromBatchId: null,
      settledOn: '2026-03-01',
      hatchedOn: null,
    })),
    facts: facts
      .filter(({ revision, struckIn }) => revision <= at && revision > (after ?? 0) && isStanding(struckIn))
      .map(({ row }) => row)
      .sort((a, b) => a[3] - b[3] || (a[0] < b[0] ? -1 : 1)),
    reopened: 0,
    struck: facts
      .filter(({ struckIn }) => after !== null && struckIn !== null && struckIn > after && struckIn <= at)
      .map(({ row: [id] }) => id),
  }
}

const since = windowStart(now)
const told = ({ snapshot, ...state }: ReturnType<typeof openState>) => ({ ...state, snapshot: { ...snapshot } })

describe('the state of a room', () => {
  test('caught up, write by write or over several at once, is the state read anew', () => {
    fc.assert(
      fc.property(happened, fc.integer({ min: 1, max: 5 }), (given, stride) => {
        const all = written(given)
        let state = openState(rowsAt(all, 1, null), since)
        for (let at = 1 + stride; at <= 12; at += stride) {
          state = advanceState(state, rowsAt(all, at, at - stride), since)
          expect(told(state)).toEqual(told(openState(rowsAt(all, at, null), since)))
        }
      }),
    )
  })

  test('on a later day is the one read on that day', () => {
    fc.assert(
      fc.property(happened, fc.integer({ min: 1, max: 90 }), (given, days) => {
        const all = written(given)
        const later = windowStart(new Date(Date.parse(now) + days * dayMs).toISOString())
        const slid = slideState(openState(rowsAt(all, 3, null), since), later)
        expect(told(slid)).toEqual(told(openState(rowsAt(all, 3, null), later)))
      }),
    )
  })

  test('holds nothing of what ended before the window but how animals came to what lives', () => {
    const old: Happened['facts'][number] = {
      kind: 'loss',
      about: 0,
      into: 1,
      daysAgo: 100,
      revision: 1,
      struckAfter: null,
    }
    const facts = [old, { ...old, kind: 'transfer' as const }, { ...old, kind: 'loss' as const, about: 1 }]
    const rows = (at: number) => rowsAt(written({ facts, ends: [['batch', 0, 2]] }), at, null)
    expect(openState(rows(1), since).snapshot.facts.map(({ id }) => id)).toEqual([
      'fact-0000',
      'fact-0001',
      'fact-0002',
    ])
    expect(openState(rows(2), since).snapshot.facts.map(({ id }) => id)).toEqual(['fact-0001', 'fact-0002'])
  })
})
