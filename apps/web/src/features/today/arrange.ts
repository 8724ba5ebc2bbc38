import { type Day, type Station, stations, type Task, undoMinutes } from '@fryward/shared'

export type StationGroup = { station: Station; tasks: Task[] }
export type SubjectGroup = { subject: Task['subject']; tasks: Task[] }

const minuteMs = 60_000

export const isLate = (task: Task, now: Date): boolean => task.state === 'open' && new Date(task.lateAt) <= now

/** Withdrawn tasks are told apart: nobody has to do anything about them. */
export const isShown = (task: Task): boolean => task.state !== 'withdrawn'

/** The sign-off that stands: the newest that nobody has taken back. */
export const standingSignOff = (task: Task) => task.signOffs.filter((one) => one.undoneAt === null).at(-1)

/** When the person may still take it back, the instant until which; null otherwise. */
export function undoableUntil(task: Task, now: Date): Date | null {
  const since = task.state === 'done' ? standingSignOff(task)?.receivedAt : task.state === 'skipped' && task.closedAt
  if (!since) return null
  const until = new Date(new Date(since).getTime() + undoMinutes * minuteMs)
  return until > now ? until : null
}

const byDue = (a: Task, b: Task) => a.dueAt.localeCompare(b.dueAt) || a.ordinal - b.ordinal

/** Walking order: station by station, cleanest water first; within one, by vessel so that nobody walks twice. */
export function groupByStation(tasks: Task[]): StationGroup[] {
  return stations
    .map((station) => ({ station, tasks: tasks.filter((task) => task.station === station).sort(byVessel) }))
    .filter((group) => group.tasks.length > 0)
}
const byVessel = (a: Task, b: Task) => a.subject.name.localeCompare(b.subject.name) || byDue(a, b)

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
export const lateTasks = (day: Day, now: Date): Task[] =>
  groupByStation(day.tasks.filter((task) => isLate(task, now))).flatMap((group) => group.tasks)

export type RoundState = { id: string; name: string; startsAt: string; open: number; all: number }

export function roundStates(day: Day): RoundState[] {
  return day.rounds.map((round) => {
    const tasks = day.tasks.filter((task) => task.roundId === round.id && isShown(task))
    return { ...round, open: tasks.filter((task) => task.state === 'open').length, all: tasks.length }
  })
}

/** The round to open on: the one under way; when it has nothing open any more, the next that has. */
export function currentRoundId(day: Day, now: Date): string | undefined {
  const rounds = roundStates(day)
  const under = rounds.findLastIndex((round) => new Date(round.startsAt) <= now)
  const from = rounds.slice(Math.max(0, under))
  return (from.find((round) => round.open > 0) ?? from[0])?.id
}

export function progressOf(tasks: Task[]): { done: number; all: number } {
  const counted = tasks.filter(isShown)
  return { done: counted.filter((task) => task.state !== 'open').length, all: counted.length }
}

/** Who did how much, most first. */
export function whoDidWhat(tasks: Task[]): { name: string; done: number }[] {
  const tally = new Map<string, number>()
  for (const task of tasks) {
    for (const signOff of task.signOffs.filter((one) => one.undoneAt === null))
      tally.set(signOff.byName, (tally.get(signOff.byName) ?? 0) + 1)
  }
  return [...tally].map(([name, done]) => ({ name, done })).sort((a, b) => b.done - a.done)
}

/** One tap does it when nothing has to be measured. */
export const isOneTap = (task: Task): boolean => task.fields.every((field) => !field.isRequired)
