import type { Id, Instant, PlainDate, Station, SubjectKind, TaskContent } from '@fryward/shared'
import { addMinutes } from '../calendar/elapsed.ts'
import { type HusbandryDay, husbandryDay } from '../calendar/husbandry-day.ts'
import type { Fact } from '../facts/fact.ts'
import { Gap } from '../rule/gap.ts'
import type { Rule, RuleDraft, Subject } from '../rule/rule.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import { parameterLink } from '../rule/why.ts'
import { answerOf, isLive } from '../snapshot/live-snapshot.ts'
import type { RoomSnapshot } from '../snapshot/room-snapshot.ts'
import { subjectsOf } from './subjects.ts'
import { taskKey } from './task-key.ts'

/** One due action, ready to be kept. */
export type TaskDraft = {
  key: string
  ruleId: string
  subjectId: Id
  subjectKind: SubjectKind
  subjectName: string
  station: Station
  onDate: PlainDate
  roundId: string
  ordinal: number
  dueAt: Instant
  lateAt: Instant
  closesAt: Instant
  isForStandIn: boolean
  content: TaskContent
  context: unknown
}

/** A rule that could not be worked out for a subject, and what is missing. */
export type DayGap = { ruleId: string; subjectId: Id; subjectName: string; message: string }
export type DayDrafts = { drafts: TaskDraft[]; gaps: DayGap[] }

// Two hours' grace before an open task shows as late. common practice
const lateAfterMinutes = 120

/** Everything that one local day of a room asks for. Pure: the same snapshot, date and rules give the same answer. */
export function draftDay({
  snapshot: given,
  date,
  rules,
}: {
  snapshot: RoomSnapshot
  date: PlainDate
  rules: readonly Rule[]
}): DayDrafts {
  const snapshot = inOrder(given)
  const day = husbandryDay({ room: snapshot.room, date })
  const found = rules.map((rule) =>
    answerOf(snapshot, { question: rule, key: date }, () => draftRule({ snapshot, day, rule })),
  )
  return { drafts: found.flatMap(({ drafts }) => drafts), gaps: found.flatMap(({ gaps }) => gaps) }
}

/** What one rule asks for on a day. */
function draftRule({ snapshot, day, rule }: Omit<Asked, 'subject'>): DayDrafts {
  // The day's hours are the room's.
  void snapshot.room
  if (!ruleInForce(snapshot, rule).isOn) return { drafts: [], gaps: [] }
  const found = subjectsOf(snapshot, rule, day.date).map((subject) =>
    answerOf(snapshot, { question: rule, key: keyOf(subject, day.date) }, () =>
      draftOne({ snapshot, day, rule, subject }),
    ),
  )
  return { drafts: found.flatMap((each) => each.drafts), gaps: found.flatMap((each) => each.gaps) }
}

const keys = new WeakMap<Subject, string>()

/** A thing on a list belongs to one day, and each rule asks about it: words joined anew are hashed anew. */
function keyOf(subject: Subject, date: PlainDate): string {
  const known = keys.get(subject)
  if (known !== undefined) return known
  const key = `${date} ${subject.id} ${subject.station} ${subject.name}`
  keys.set(subject, key)
  return key
}

type Asked = { snapshot: RoomSnapshot; day: HusbandryDay; rule: Rule; subject: Subject }

/** What one rule asks for about one subject, or what is missing to say so. */
function draftOne({ snapshot, day, rule, subject }: Asked): DayDrafts {
  // The day's hours are the room's.
  void snapshot.room
  const { parameters } = ruleInForce(snapshot, rule)
  try {
    const found = rule.draft({ snapshot, day, subject, parameters, parameter: parameterLink(rule, parameters) })
    return { drafts: found.map((draft) => complete({ draft, rule, subject, day })), gaps: [] }
  } catch (error) {
    if (!(error instanceof Gap)) throw error
    const gap = { ruleId: rule.id, subjectId: subject.id, subjectName: subject.name, message: error.message }
    return { drafts: [], gaps: [gap] }
  }
}

/** Facts in order of `at`, then id, however they came: facts of one instant have no other order. A live one keeps it. */
function inOrder(snapshot: RoomSnapshot): RoomSnapshot {
  if (isLive(snapshot)) return snapshot
  const { facts } = snapshot
  const isBefore = (a: Fact, b: Fact) => a.at < b.at || (a.at === b.at && a.id < b.id)
  if (facts.every((fact, index) => index === 0 || !isBefore(fact, facts[index - 1]!))) return snapshot
  return { ...snapshot, facts: [...facts].sort((a, b) => (isBefore(a, b) ? -1 : isBefore(b, a) ? 1 : 0)) }
}

function complete(input: {
  draft: RuleDraft<unknown>
  rule: Rule
  subject: Subject
  day: ReturnType<typeof husbandryDay>
}): TaskDraft {
  const { draft, rule, subject, day } = input
  const round = day.rounds.find((each) => each.id === draft.roundId)
  if (!round) throw new Error(`Rule ${rule.id} names a round that the room does not have: ${draft.roundId}`)
  const ordinal = draft.ordinal ?? 1
  const dueAt = draft.dueAt ?? round.startsAt
  return {
    key: taskKey({ ruleId: rule.id, subjectId: subject.id, onDate: day.date, roundId: round.id, ordinal }),
    ruleId: rule.id,
    subjectId: subject.id,
    subjectKind: subject.kind,
    subjectName: subject.name,
    station: subject.station,
    onDate: day.date,
    roundId: round.id,
    ordinal,
    dueAt,
    lateAt: addMinutes(dueAt, draft.lateAfterMinutes ?? lateAfterMinutes),
    closesAt: draft.closesAt ?? day.endsAt,
    isForStandIn: draft.isForStandIn ?? true,
    content: draft.content,
    context: draft.context,
  }
}
