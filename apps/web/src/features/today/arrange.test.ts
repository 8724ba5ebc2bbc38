import { DaySchema, type Task, TaskSchema } from '@fryward/shared'
import { describe, expect, it } from 'vitest'
import { currentRoundId, groupByStation, isOneTap, lateTasks, progressOf, undoableUntil } from './arrange.ts'

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
    because: [],
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
    revision: 1,
  })

const at = (time: string) => new Date(`2026-11-25T${time}:00Z`)

describe('a day on the screen', () => {
  it('walks from the cleanest water to quarantine', () => {
    const tasks = (['quarantine', 'larvae', 'microalgae'] as const).map((station, i) => makeTask(i, { station }))
    expect(groupByStation(tasks).map((group) => group.station)).toEqual(['microalgae', 'larvae', 'quarantine'])
  })

  it('calls an open task late from its own instant on and a done one never', () => {
    const day = dayOf([makeTask(1), makeTask(2, { state: 'done' })])
    expect(lateTasks(day, at('08:59'))).toEqual([])
    expect(lateTasks(day, at('09:00')).map((task) => task.id)).toEqual([id(1)])
  })

  it('walks late tasks in the same order, however old they are', () => {
    const older = makeTask(1, { station: 'broodstock', dueAt: '2026-11-25T06:00:00Z' })
    const cleaner = makeTask(2, { station: 'live_food', dueAt: '2026-11-25T08:00:00Z' })
    expect(lateTasks(dayOf([older, cleaner]), at('09:30')).map((task) => task.id)).toEqual([id(2), id(1)])
  })

  it('opens on the round under way and moves on when nothing in it is open', () => {
    const evening = makeTask(2, { roundId: 'evening' })
    expect(currentRoundId(dayOf([makeTask(1), evening]), at('08:00'))).toBe('morning')
    expect(currentRoundId(dayOf([makeTask(1, { state: 'done' }), evening]), at('08:00'))).toBe('evening')
    expect(currentRoundId(dayOf([makeTask(1), evening]), at('06:00'))).toBe('morning')
  })

  it('leaves withdrawn tasks out of the progress', () => {
    const tasks = [makeTask(1), makeTask(2, { state: 'skipped' }), makeTask(3, { state: 'withdrawn' })]
    expect(progressOf(tasks)).toEqual({ done: 1, all: 2 })
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

  it('takes one tap only where nothing has to be measured', () => {
    const field = { type: 'yes_no' as const, name: 'eggs', label: 'Eggs?', help: null }
    expect(isOneTap(makeTask(1, { fields: [{ ...field, isRequired: false }] }))).toBe(true)
    expect(isOneTap(makeTask(1, { fields: [{ ...field, isRequired: true }] }))).toBe(false)
  })
})
