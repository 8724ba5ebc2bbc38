import type { Id, PlainDate } from '@fryward/shared'

/** The parts that make a task the same task, however often the day is worked out. */
export type TaskKeyParts = { ruleId: string; subjectId: Id; onDate: PlainDate; roundId: string; ordinal: number }

/**
 * The one grammar of task keys: `rule/subject/date/round/ordinal`.
 * None of the parts can hold a slash (rule and round ids are lower-case words, ids are UUIDs), so no two keys collide.
 */
export function taskKey({ ruleId, subjectId, onDate, roundId, ordinal }: TaskKeyParts): string {
  return [ruleId, subjectId, onDate, roundId, ordinal].join('/')
}

export function parseTaskKey(key: string): TaskKeyParts {
  const match = /^([a-z][a-z0-9-]*)\/([0-9a-f-]{36})\/(\d{4}-\d{2}-\d{2})\/([a-z][a-z0-9_]*)\/(\d+)$/.exec(key)
  if (!match) throw new Error(`Not a task key: ${key}; expected rule/subject/date/round/ordinal`)
  const [, ruleId, subjectId, onDate, roundId, ordinal] = match
  return { ruleId: ruleId!, subjectId: subjectId!, onDate: onDate!, roundId: roundId!, ordinal: Number(ordinal) }
}
