import type {
  Because,
  Fact,
  FactKind,
  factDataSchemas,
  Id,
  Instant,
  PlainDate,
  Station,
  SubjectKind,
  TaskContent,
} from '@fryward/shared'
import type { z } from 'zod'
import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import type { RoomSnapshot } from '../snapshot.ts'
import { type Parameters, type ParameterValues, sourceText } from './parameters.ts'

export type Subject = { id: Id; kind: SubjectKind; name: string; station: Station }

/** What a rule says of one due action; the engine adds key, rule, subject, date and windows. */
export type RuleDraft<C> = {
  roundId: string
  /** Tells apart two actions of one rule on one subject in one round; 1 when left out. */
  ordinal?: number
  content: TaskContent
  /** What the rule needs at sign-off to write the records; kept with the task. */
  context: C
  /** False when a stand-in is not asked to do this. */
  isForStandIn?: boolean
  /** Where it is not due with its round: what is done in the dark is due at lights off. */
  dueAt?: Instant
  /** When an open task shows as late, minutes after it is due; two hours when left out. */
  lateAfterMinutes?: number
  /** When an open task is closed as missed; the end of its day when left out. */
  closesAt?: Instant
}

/** A record that a sign-off writes. */
export type FactDraft = {
  [K in FactKind]: { kind: K; subjectId: Id; data: z.input<(typeof factDataSchemas)[K]> }
}[FactKind]

/** What a sign-off brings into being, with the fact that it stands on. */
export type Creation =
  | { kind: 'clutch'; pairId: Id; spawnedAt: Instant; eggs?: number }
  | { kind: 'larval_batch'; tankId: Id; species: string; clutchIds: Id[]; hatchedOn: PlainDate; larvae?: number }
  | { kind: 'juvenile_group'; tankId: Id; fromBatchId: Id; settledOn: PlainDate; number: number }
export type Outcome = { facts: FactDraft[]; creations?: Creation[] }

export type DraftInput<P extends Parameters> = {
  snapshot: RoomSnapshot
  day: HusbandryDay
  subject: Subject
  parameters: ParameterValues<P>
  /** A link of "why" that names one of this rule's parameters with its source. */
  parameter: (name: keyof P & string, joins?: Because['joins']) => Because
}
export type RecordInput<C> = {
  context: C
  content: TaskContent
  values: Record<string, unknown>
  doneAt: Instant
  subjectId: Id
}

/**
 * One piece of husbandry: when it applies, what it asks for, and what its sign-off records.
 * `draft` is pure: the same snapshot and day always give the same drafts.
 */
export type Rule<P extends Parameters = Parameters, C = unknown> = {
  id: string
  title: string
  /** A sentence with `{parameter}` where a parameter stands. */
  sentence: string
  subject: SubjectKind
  station: Station
  isOnByDefault: boolean
  parameters: P
  draft: (input: DraftInput<P>) => RuleDraft<C>[]
  record: (input: RecordInput<C>) => Outcome
}

/** Keeps the types of one rule together while all rules share one list. */
export function defineRule<P extends Parameters, C>(rule: Rule<P, C>): Rule {
  return rule as unknown as Rule
}

/** Something the room has not told us yet; shown on the day's list with what to do about it. */
export class Gap extends Error {
  override name = 'Gap'
}

export function parameterLink(rule: Pick<Rule, 'id' | 'parameters'>, values: Record<string, unknown>) {
  return (name: string, joins: Because['joins'] = null): Because => {
    const parameter = rule.parameters[name]
    if (!parameter) throw new Error(`Rule ${rule.id} has no parameter ${name}`)
    const value = values[name]
    const isNumber = parameter.type === 'number'
    return {
      label: parameter.label,
      quantity: isNumber && parameter.unit ? { value: Number(value), unit: parameter.unit } : null,
      text: isNumber && parameter.unit ? null : String(value),
      joins,
      origin: {
        kind: 'parameter',
        ruleId: rule.id,
        parameter: name,
        source: sourceText(parameter.source),
        isChanged: value !== parameter.default,
      },
    }
  }
}

/** A link of "why" that was read from a fact. */
export function factLink(fact: Fact, link: Pick<Because, 'label'> & Partial<Because>): Because {
  return {
    quantity: null,
    text: null,
    joins: null,
    ...link,
    origin: { kind: 'fact', factId: fact.id, subjectId: fact.subjectId, at: fact.at, byName: fact.recordedByName },
  }
}

export function settingLink(
  subjectId: Id | null,
  where: string,
  link: Pick<Because, 'label'> & Partial<Because>,
): Because {
  return { quantity: null, text: null, joins: null, ...link, origin: { kind: 'setting', subjectId, where } }
}

export function computedLink(
  by: string,
  source: string | null,
  link: Pick<Because, 'label'> & Partial<Because>,
): Because {
  return { quantity: null, text: null, joins: 'equals', ...link, origin: { kind: 'computed', by, source } }
}

export function profileLink(species: string, source: string, link: Pick<Because, 'label'> & Partial<Because>): Because {
  return { quantity: null, text: null, joins: null, ...link, origin: { kind: 'profile', species, source } }
}
