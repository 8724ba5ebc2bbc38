import type {
  Because,
  ClutchIntent,
  FieldProblem,
  Id,
  Instant,
  PlainDate,
  RotiferStrain,
  Station,
  SubjectKind,
  TaskContent,
} from '@fryward/shared'
import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import type { FactDraft } from '../facts/fact.ts'
import type { RoomSnapshot } from '../snapshot/room-snapshot.ts'
import type { RuleDefinition } from './definition.ts'
import type { Parameters, ParameterValues } from './parameters.ts'

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

/** What a sign-off brings into being, with the fact that it stands on. */
export type Creation =
  | { kind: 'clutch'; pairId: Id; spawnedAt: Instant; eggs?: number; intent?: ClutchIntent }
  | {
      kind: 'larval_batch'
      /** Where they are; a tank that the room does not have yet is made with them. */
      tank: { id: Id } | { volumeL: number; temperatureC: number; salinity: number }
      species: string
      clutchIds: Id[]
      hatchedOn: PlainDate
      larvae?: number
      /** The cultures that feed them from their first morning. */
      cultureIds: Id[]
    }
  | {
      kind: 'culture'
      volumeL: number
      temperatureC: number
      salinity: number
      strain: RotiferStrain
      concentrateId: Id | null
      /** The culture that it is started from, and the litres taken out of it; null and 0 for one that is bought in. */
      parentCultureId: Id | null
      drawnL: number
      startDensityPerMl: number
      isBackup?: boolean
    }
  | {
      kind: 'juvenile_group'
      tankId: Id
      fromBatchId: Id
      settledOn: PlainDate
      number: number
      lengthMm?: number
      deformed?: number
    }
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
 * One piece of husbandry: its definition, what it asks for on a day, and what its sign-off records.
 * `draft` is pure: the same snapshot and day always give the same drafts.
 */
export type Rule<P extends Parameters = Parameters, C = unknown> = RuleDefinition<P> & Drafting<P, C>

type Drafting<P extends Parameters, C> = {
  draft: (input: DraftInput<P>) => RuleDraft<C>[]
  /** What only the typed values together can tell to be missing or wrong; each value alone has passed its field. */
  check?: (values: Record<string, unknown>) => FieldProblem[]
  record: (input: RecordInput<C>) => Outcome
}

/** Puts a rule together, keeping the types of its parameters and context; all rules share one list. */
export function defineRule<P extends Parameters, C>(definition: RuleDefinition<P>, drafting: Drafting<P, C>): Rule {
  return { ...definition, ...drafting } as unknown as Rule
}
