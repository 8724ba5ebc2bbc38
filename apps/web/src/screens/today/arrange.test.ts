import { DaySchema, type Station, stations, type Task, type TaskField, TaskSchema } from '@fryward/shared'
import { describe, expect, it } from 'vitest'
import { isOneTap, undoableUntil } from '@/parts/tasks/task-state.ts'
import {
  currentRoundId,
  groupByStation,
  isQuiet,
  lateTasks,
  leadingTasks,
  nextRound,
  plannedTasks,
  progressOf,
  roundStates,
  sayLeft,
  withdrawnOn,
} from './arrange.ts'
import { sayWho } from './say-progress.ts'

const id = (n: number) => `01900000-0000-7000-8000-${String(n).padStart(12, '0')}`

const makeTask = (n: number, part: Partial<Task> = {}): Task =>
  TaskSchema.parse({
    verb: 'feed',
    title: { text: 'Feed', quantities: {} },
    amount: null,
    amountOf: null,
    steps: [],
    cautions: [],
    fields: [],
    id: id(n),
    key: `k${n}`,
    ruleId: 'rotifer-feed',
    ruleTitle: 'Feed the rotifers',
    subject: { id: id(100 + n), kind: 'culture', name: `R${n}` },
    station: 'live_food',
    onDate: '2026-11-25',
    roundId: 'morning',
    ordinal: 0,
    state: 'open',
    dueAt: '2026-11-25T07:00:00Z',
    lateAt: '2026-11-25T09:00:00Z',
    closesAt: '2026-11-26T07:00:00Z',
    isForStandIn: true,
    reason: null,
    closedByName: null,
    closedAt: null,
    signOffs: [],
    lastValues: {},
    changes: [],
    version: 1,
    ...part,
  })

const signOff = (receivedAt: string, undoneAt: string | null = null): Task['signOffs'][number] => ({
  id: id(900),
  byName: 'Ana',
  byUserId: 'ana',
  doneAt: receivedAt,
  receivedAt,
  values: {},
  shownAmount: null,
  isRepeat: false,
  isAfterTheFact: false,
  undoneAt,
})

const dayOf = (tasks: Task[]) =>
  DaySchema.parse({
    date: '2026-11-25',
    today: '2026-11-25',
    rounds: [
      { id: 'morning', name: 'Morning', startsAt: '2026-11-25T07:00:00Z' },
      { id: 'evening', name: 'Evening', startsAt: '2026-11-25T18:30:00Z' },
    ],
    tasks,
    gaps: [],
    isOpened: true,
    lightsOffAt: '2026-11-25T20:00:00Z',
    onDuty: null,
    revision: 1,
  })

const at = (time: string) => new Date(`2026-11-25T${time}:00Z`)

describe('a day on the screen', () => {
  it('walks as the room does: from the cleanest water to quarantine where nothing else is said', () => {
    const tasks = (['quarantine', 'larvae', 'microalgae'] as const).map((station, i) => makeTask(i, { station }))
    const walk = (order: readonly Station[]) => groupByStation(tasks, order).map((group) => group.station)
    expect(walk(stations)).toEqual(['microalgae', 'larvae', 'quarantine'])
    expect(walk(['larvae', ...stations.filter((one) => one !== 'larvae')])).toEqual([
      'larvae',
      'microalgae',
      'quarantine',
    ])
  })

  it('calls an open task late from its own instant on and a done one never', () => {
    const tasks = [makeTask(1), makeTask(2, { state: 'done' })]
    expect(lateTasks(tasks, stations, at('08:59'))).toEqual([])
    expect(lateTasks(tasks, stations, at('09:00')).map((task) => task.id)).toEqual([id(1)])
  })

  it('walks late tasks in the same order, however old they are', () => {
    const older = makeTask(1, { station: 'broodstock', dueAt: '2026-11-25T06:00:00Z' })
    const cleaner = makeTask(2, { station: 'live_food', dueAt: '2026-11-25T08:00:00Z' })
    expect(lateTasks([older, cleaner], stations, at('09:30')).map((task) => task.id)).toEqual([id(2), id(1)])
  })

  it('has a night beside its rounds when something is due in the dark, and only then', () => {
    const inTime = { roundId: 'evening', lateAt: '2026-11-25T23:00:00Z' }
    const evening = makeTask(1, { ...inTime, dueAt: '2026-11-25T18:30:00Z' })
    const watch = makeTask(2, { ...inTime, dueAt: '2026-11-25T20:00:00Z' })
    const named = (tasks: Task[]) => roundStates(dayOf(tasks), at('12:00')).map(({ name, open }) => [name, open])
    expect(named([evening])).toEqual([
      ['Morning', 0],
      ['Evening', 1],
    ])
    expect(named([evening, watch])).toEqual([
      ['Morning', 0],
      ['Evening', 1],
      ['Tonight', 1],
    ])
    expect(currentRoundId(dayOf([{ ...evening, state: 'done' }, watch]), at('19:00'))).toBe('tonight')
    expect(named([{ ...watch, state: 'withdrawn' }])).toHaveLength(2)
  })

  it('opens on the round under way and moves on when nothing in it is open', () => {
    const evening = makeTask(2, { roundId: 'evening' })
    expect(currentRoundId(dayOf([makeTask(1), evening]), at('08:00'))).toBe('morning')
    expect(currentRoundId(dayOf([makeTask(1, { state: 'done' }), evening]), at('08:00'))).toBe('evening')
    expect(currentRoundId(dayOf([makeTask(1), evening]), at('06:00'))).toBe('morning')
  })

  it('opens on the next round when only late tasks are left of the one under way, which stand above all rounds', () => {
    const evening = makeTask(2, { roundId: 'evening', lateAt: '2026-11-25T20:30:00Z' })
    expect(currentRoundId(dayOf([makeTask(1), evening]), at('09:30'))).toBe('evening')
    const inTime = makeTask(3, { lateAt: '2026-11-25T11:00:00Z' })
    expect(currentRoundId(dayOf([makeTask(1), inTime, evening]), at('09:30'))).toBe('morning')
  })

  it('counts what is late apart from what a round still holds', () => {
    const evening = makeTask(2, { roundId: 'evening', lateAt: '2026-11-25T20:30:00Z' })
    const rounds = roundStates(dayOf([makeTask(1), makeTask(3, { state: 'done' }), evening]), at('09:30'))
    expect(rounds.map(sayLeft)).toEqual(['1 late', '1 open'])
    expect(nextRound(rounds, 'morning')?.id).toBe('evening')
    expect(nextRound(rounds, 'evening')).toBeUndefined()
  })

  it('goes back to what an earlier round has left when nothing later is open', () => {
    const evening = makeTask(2, { roundId: 'evening', state: 'done' })
    const rounds = roundStates(dayOf([makeTask(1), evening]), at('08:00'))
    expect(nextRound(rounds, 'evening')?.id).toBe('morning')
  })

  it('leaves withdrawn tasks out of the progress, and calls one that was passed by not seen to', () => {
    const tasks = [
      makeTask(1),
      makeTask(2, { state: 'skipped' }),
      makeTask(3, { state: 'withdrawn' }),
      makeTask(4, { state: 'missed' }),
    ]
    expect(progressOf(tasks)).toEqual({ done: 1, all: 3 })
  })

  it('says by whose hands: all by one, or how many by each, and you for the one who reads', () => {
    const done = (n: number, byName: string) =>
      makeTask(n, { state: 'done', signOffs: [{ ...signOff('2026-11-25T08:00:00Z'), byName }] })
    const skipped = makeTask(9, { state: 'skipped', closedByName: 'Ben' })
    expect(sayWho([makeTask(1)], 'Ana')).toBe('seen to')
    expect(sayWho([done(1, 'Ana'), done(2, 'Ana'), makeTask(3)], 'Ana')).toBe('seen to, all by you')
    expect(sayWho([done(1, 'The owner')], 'Ana')).toBe('seen to: The owner')
    expect(sayWho([done(1, 'Ana'), done(2, 'The owner'), done(3, 'The owner'), skipped], 'Ana')).toBe(
      'seen to: The owner 2, you 1, Ben 1',
    )
  })

  it('calls a stop quiet once nothing is open there and nothing can be taken back', () => {
    const done = makeTask(1, { state: 'done', signOffs: [signOff('2026-11-25T08:00:00Z')] })
    const stop = (...tasks: Task[]) => ({ station: 'live_food' as const, tasks })
    const none = new Set<string>()
    expect(isQuiet(stop(done), { now: at('08:14'), isLate: none })).toBe(false)
    expect(isQuiet(stop(done), { now: at('08:15'), isLate: none })).toBe(true)
    expect(isQuiet(stop(done), { now: at('08:15'), isLate: new Set([done.subject.id]) })).toBe(false)
    expect(isQuiet(stop(done, makeTask(2)), { now: at('08:15'), isLate: none })).toBe(false)
    // Why it was skipped stands to be read.
    expect(isQuiet(stop(done, makeTask(2, { state: 'skipped' })), { now: at('08:15'), isLate: none })).toBe(false)
  })

  it('lets a standing sign-off be taken back for a quarter of an hour', () => {
    const done = makeTask(1, { state: 'done', signOffs: [signOff('2026-11-25T08:00:00Z')] })
    expect(undoableUntil(done, at('08:14'))).toEqual(at('08:15'))
    expect(undoableUntil(done, at('08:15'))).toBeNull()
    const taken = makeTask(1, {
      state: 'done',
      signOffs: [signOff('2026-11-25T08:00:00Z', '2026-11-25T08:01:00Z')],
    })
    expect(undoableUntil(taken, at('08:02'))).toBeNull()
  })

  it('lets a skip be taken back for as long, and nothing that the scheduler closed', () => {
    const closedAt = '2026-11-25T08:00:00Z'
    expect(undoableUntil(makeTask(1, { state: 'skipped', closedAt }), at('08:14'))).toEqual(at('08:15'))
    expect(undoableUntil(makeTask(1, { state: 'skipped', closedAt }), at('08:15'))).toBeNull()
    expect(undoableUntil(makeTask(1, { state: 'missed', closedAt }), at('08:01'))).toBeNull()
  })

  it('signs off as planned what is one tap and this person may do, in the order of the list', () => {
    const field = { type: 'yes_no' as const, name: 'eggs', label: 'Eggs?', help: null, isRequired: true }
    const tasks = [
      makeTask(1),
      makeTask(2, { fields: [field] }),
      makeTask(3, { cautions: ['Gloves.'] }),
      makeTask(4, { isForStandIn: false }),
      makeTask(5, { state: 'done' }),
      makeTask(6),
    ]
    expect(plannedTasks(tasks, 'caretaker').map((task) => task.id)).toEqual([id(1), id(4), id(6)])
    expect(plannedTasks(tasks, 'stand_in').map((task) => task.id)).toEqual([id(1), id(6)])
  })

  it('leaves a vessel out of a whole stop while something at it is still to be counted', () => {
    const field = { type: 'yes_no' as const, name: 'n', label: 'N', help: null, isRequired: true }
    const { subject } = makeTask(1)
    const count = makeTask(1, { verb: 'count', fields: [field] })
    const feed = makeTask(2, { subject })
    const other = makeTask(3)
    const planned = (tasks: Task[]) => plannedTasks(tasks, 'caretaker').map((task) => task.id)
    expect(planned([count, feed, other])).toEqual([id(3)])
    expect(planned([{ ...count, state: 'done' }, feed, other])).toEqual([id(2), id(3)])
  })

  it('takes one tap only where nothing has to be measured and no caution has to be read', () => {
    expect(isOneTap(makeTask(1, { cautions: ['Gloves.'] }))).toBe(false)
    const field = { type: 'yes_no' as const, name: 'eggs', label: 'Eggs?', help: null }
    expect(isOneTap(makeTask(1, { fields: [{ ...field, isRequired: false }] }))).toBe(true)
    expect(isOneTap(makeTask(1, { fields: [{ ...field, isRequired: true }] }))).toBe(false)
  })
})

describe('a task whose count may be left out', () => {
  const count: TaskField = {
    ...{ type: 'count', name: 'count', label: 'Nauplii', isRequired: false, help: null, unit: 'per_mL', usual: null },
    ...{ minimum: 0, maximum: 9, likelyMinimum: 0, likelyMaximum: 9, volumeMl: 1, replicates: 3, withEggs: false },
  }

  it('is opened, not tapped away: what follows is measured by it', () => {
    const harvest = makeTask(1, { verb: 'harvest', fields: [count] })
    expect(isOneTap(harvest)).toBe(false)
    expect(plannedTasks([harvest, makeTask(2)], 'caretaker').map(({ id }) => id)).toEqual([id(2)])
  })
})

describe('what leads a round', () => {
  const hatched = (n: number, part: Partial<Task> = {}) =>
    makeTask(n, {
      title: { deed: 'what_hatched', thing: null, amount: null, from: null, to: [], details: [] },
      station: 'broodstock',
      ...part,
    })
  const now = new Date('2026-11-25T07:10:00Z')

  it('is what has hatched, though its stop comes late in the walk', () => {
    const asked = hatched(2)
    expect(leadingTasks([makeTask(1), asked, makeTask(3, { station: 'larvae' })], now)).toEqual([asked])
  })

  it('stays there once answered while it can be taken back, and is then a line of its stop', () => {
    const just = hatched(1, { state: 'done', signOffs: [signOff('2026-11-25T07:09:00Z')] })
    const before = hatched(2, { state: 'done', signOffs: [signOff('2026-11-25T05:00:00Z')] })
    expect(leadingTasks([just, before, hatched(3, { state: 'withdrawn' })], now)).toEqual([just])
  })
})

describe('what is no longer needed', () => {
  it('is told of what was on the list of its day, by the room’s clock', () => {
    const gone = (n: number, closedAt: string) => makeTask(n, { state: 'withdrawn', closedAt, reason: 'a count' })
    // Midnight in Lisbon is 00:00 UTC in winter, in Auckland 11:00 UTC the day before.
    const tasks = [gone(1, '2026-11-24T10:59:00Z'), gone(2, '2026-11-24T11:01:00Z'), gone(3, '2026-11-25T07:00:00Z')]
    const told = (timeZone: string) => withdrawnOn([...tasks, makeTask(4)], { date: '2026-11-25', timeZone })
    expect(told('Pacific/Auckland')).toEqual(tasks.slice(1))
    expect(told('Europe/Lisbon')).toEqual(tasks.slice(2))
  })
})
