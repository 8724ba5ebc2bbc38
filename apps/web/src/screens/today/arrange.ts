import type { Day, Role, Station, Task } from '@fryward/shared'
import { toPlainDate } from '@fryward/words'
import { isLate, isOneTap, isShown, undoableUntil } from '@/parts/tasks/task-state.ts'

export type StationGroup = { station: Station; tasks: Task[] }
export type SubjectGroup = { subject: Task['subject']; tasks: Task[] }

const byDue = (a: Task, b: Task) => a.dueAt.localeCompare(b.dueAt) || a.ordinal - b.ordinal

/** Walking order: station by station as the room walks them; within one, by vessel so that nobody walks twice. */
export function groupByStation(tasks: Task[], order: readonly Station[]): StationGroup[] {
  return order
    .map((station) => ({ station, tasks: tasks.filter((task) => task.station === station).sort(byVessel) }))
    .filter((group) => group.tasks.length > 0)
}
const byVessel = (a: Task, b: Task) => a.subject.name.localeCompare(b.subject.name) || byDue(a, b)

const leadingDeeds: ReadonlySet<string> = new Set([
  ...['what_hatched', 'what_hatched_second', 'what_released', 'what_released_second'],
])

/**
 * What the rest of a round follows from, before its first stop: larvae eat within hours of hatching, and what a culture gives to
 * others first they cannot have. One that was just answered stays where it was while it can be taken back.
 */
export function leadingTasks(tasks: Task[], now: Date): Task[] {
  const isLeading = ({ title }: Task) => 'deed' in title && leadingDeeds.has(title.deed)
  return tasks.filter((task) => isLeading(task) && (task.state === 'open' || undoableUntil(task, now) !== null))
}

/** The lines of one vessel together, in the order they came. */
export function bySubject(tasks: Task[]): SubjectGroup[] {
  const groups = new Map<string, SubjectGroup>()
  for (const task of tasks) {
    const group = groups.get(task.subject.id) ?? { subject: task.subject, tasks: [] }
    group.tasks.push(task)
    groups.set(task.subject.id, group)
  }
  return [...groups.values()]
}

/** Late tasks of any round: they stand above everything else, and are walked in the same order. */
export const lateTasks = (tasks: Task[], order: readonly Station[], now: Date): Task[] =>
  groupByStation(
    tasks.filter((task) => isLate(task, now)),
    order,
  ).flatMap((group) => group.tasks)

/** A round and what is left of it; the late ones stand above all rounds and are not in `open`. */
export type RoundState = { id: string; name: string; startsAt: string; open: number; late: number; all: number }

const tonightId = 'tonight'

/** What is due after its round has begun and the lights are off is done in the dark, apart from the round. */
const isTonight = (day: Day, task: Task): boolean =>
  task.dueAt >= day.lightsOffAt && day.rounds.some(({ id, startsAt }) => id === task.roundId && startsAt < task.dueAt)

export const roundIdOf = (day: Day, task: Task): string => (isTonight(day, task) ? tonightId : task.roundId)

/** The rounds of the day, and the night where something is due in it. */
export const roundsOf = (day: Day): Day['rounds'] =>
  day.tasks.some((task) => isShown(task) && isTonight(day, task))
    ? [...day.rounds, { id: tonightId, name: 'Tonight', startsAt: day.lightsOffAt }]
    : day.rounds

export function roundStates(day: Day, now: Date): RoundState[] {
  return roundsOf(day).map((round) => {
    const tasks = day.tasks.filter((task) => roundIdOf(day, task) === round.id && isShown(task))
    const late = tasks.filter((task) => isLate(task, now)).length
    const open = tasks.filter((task) => task.state === 'open').length - late
    return { ...round, open, late, all: tasks.length }
  })
}

/** "8 open"; "4 late" when only those are left, which stand above all rounds. */
export function sayLeft({ open, late, all }: RoundState): string {
  if (open > 0) return `${open} open`
  if (late > 0) return `${late} late`
  return all > 0 ? 'done' : 'none'
}

/** The round that the clock says is now; undefined before the first. */
export const roundUnderWay = (day: Day, now: Date): string | undefined =>
  roundsOf(day).findLast((round) => new Date(round.startsAt) <= now)?.id

/** The round to open on: the one under way; when it has nothing open but what is late, the next that has. */
export function currentRoundId(day: Day, now: Date): string | undefined {
  const rounds = roundStates(day, now)
  const under = rounds.findIndex((round) => round.id === roundUnderWay(day, now))
  const from = rounds.slice(Math.max(0, under))
  return (from.find((round) => round.open > 0) ?? from[0])?.id
}

/** The round to go on with when one is walked: the next of the day that has something open, or what an earlier one has left. */
export function nextRound(rounds: RoundState[], roundId: string | undefined): RoundState | undefined {
  const at = rounds.findIndex((round) => round.id === roundId)
  return [...rounds.slice(at + 1), ...rounds.slice(0, Math.max(0, at))].find((round) => round.open > 0)
}

export type Quiet = {
  now: Date
  /** Things of which a late task stands above the rounds. */
  isLate: ReadonlySet<string>
}

/**
 * A stop or a vessel at which nothing is open or late, nothing was skipped for a reason to be read, and nothing can be taken back
 * any more.
 */
export const isQuiet = ({ tasks }: Pick<StationGroup, 'tasks'>, { now, isLate }: Quiet): boolean =>
  tasks.every(({ state, subject }) => state !== 'open' && state !== 'skipped' && !isLate.has(subject.id)) &&
  tasks.every((task) => undoableUntil(task, now) === null)

/**
 * Tasks of a day that are no longer wanted, with what it was called off for; what was called off before the day began was
 * never on its list.
 */
export const withdrawnOn = (tasks: Task[], { date, timeZone }: { date: string; timeZone: string }): Task[] =>
  tasks.filter((task) => !isShown(task) && (!task.closedAt || toPlainDate(task.closedAt, timeZone) >= date))

/** What was passed by is not seen to. */
export function progressOf(tasks: Task[]): { done: number; all: number } {
  const counted = tasks.filter(isShown)
  return {
    done: counted.filter((task) => task.state === 'done' || task.state === 'skipped').length,
    all: counted.length,
  }
}

/** Who saw to how many, most first; a task that two really did counts for both. */
export function whoDidWhat(tasks: Task[]): { name: string; done: number }[] {
  const tally = new Map<string, number>()
  for (const task of tasks.filter(isShown)) {
    const standing = task.signOffs.filter((one) => one.undoneAt === null).map((one) => one.byName)
    const names = task.state === 'skipped' && task.closedByName ? [task.closedByName] : standing
    for (const name of new Set(names)) tally.set(name, (tally.get(name) ?? 0) + 1)
  }
  return [...tally].map(([name, done]) => ({ name, done })).sort((a, b) => b.done - a.done)
}

/**
 * Tasks of a stop that one button signs off as planned: open, one tap each, and this person's to do. Where something is
 * still to be counted, the rest of that vessel follows from the count.
 */
export function plannedTasks(tasks: Task[], role: Role): Task[] {
  const open = tasks.filter((task) => task.state === 'open')
  const uncounted = new Set(open.filter(({ verb }) => verb === 'count').map(({ subject }) => subject.id))
  return open.filter(
    (task) => isOneTap(task) && !uncounted.has(task.subject.id) && (role !== 'stand_in' || task.isForStandIn),
  )
}
