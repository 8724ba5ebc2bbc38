import * as z from 'zod/mini'
import { CountDataSchema } from './facts/count.ts'
import { HarvestPartSchema } from './facts/harvest.ts'
import { UserIdSchema } from './person.ts'
import {
  IdSchema,
  InstantSchema,
  NameSchema,
  PhraseSchema,
  PlainDateSchema,
  QuantitySchema,
  ReasonSchema,
  SubjectRefSchema,
} from './primitives.ts'
import { atMost, withDefault } from './shapes.ts'
import { TaskTitleSchema } from './title.ts'
import { photoLooks, stations, taskStates, units, verbs } from './vocabulary.ts'

/** Where a number in "why" was read. */
export const OriginSchema = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('fact'),
    factId: IdSchema,
    subjectId: IdSchema,
    at: InstantSchema,
    byName: z.string(),
  }),
  /** A setting of the room or of one of its things; `subjectId` says which page shows it. */
  z.object({ kind: z.literal('setting'), subjectId: z.nullable(IdSchema), where: z.string() }),
  z.object({
    kind: z.literal('parameter'),
    ruleId: z.string(),
    parameter: z.string(),
    source: z.string(),
    isChanged: z.boolean(),
  }),
  z.object({ kind: z.literal('profile'), species: z.string(), source: z.string() }),
  z.object({ kind: z.literal('computed'), by: z.string(), source: z.nullable(z.string()) }),
  /** The plan of the room's food. */
  z.object({ kind: z.literal('food_plan'), madeAt: InstantSchema }),
])
export type Origin = z.infer<typeof OriginSchema>

/** One link of the chain that answers "why this, why this much". `joins` ties it to the link before. */
export const BecauseSchema = z.object({
  label: z.string(),
  quantity: z.nullable(QuantitySchema),
  text: z.nullable(z.string()),
  joins: z.nullable(z.enum(['times', 'divided_by', 'plus', 'minus', 'equals', 'and'])),
  origin: OriginSchema,
})
export type Because = z.infer<typeof BecauseSchema>

const fieldBase = {
  name: z.string(),
  label: z.string(),
  isRequired: z.boolean(),
  help: z.nullable(z.string()),
}
const numberLimits = {
  unit: z.nullable(z.enum(units)),
  /** Hard limits: outside them the value is refused. */
  minimum: z.number(),
  maximum: z.number(),
  /** Outside these the value is improbable and asks for a confirmation. */
  likelyMinimum: z.number(),
  likelyMaximum: z.number(),
  /** Shown ghosted; never sent unless typed or accepted. */
  usual: z.nullable(z.number()),
}
/** What a task asks to be recorded. */
export const TaskFieldSchema = z.discriminatedUnion('type', [
  z.object({ type: z.literal('number'), ...fieldBase, ...numberLimits, step: z.number() }),
  z.object({
    type: z.literal('count'),
    ...fieldBase,
    ...numberLimits,
    volumeMl: z.number(),
    replicates: z.int(),
    withEggs: z.boolean(),
  }),
  z.object({
    type: z.literal('choice'),
    ...fieldBase,
    choices: z.array(z.object({ value: z.string(), label: z.string() })),
  }),
  z.object({
    type: z.literal('choices'),
    ...fieldBase,
    choices: z.array(z.object({ value: z.string(), label: z.string() })),
  }),
  z.object({ type: z.literal('yes_no'), ...fieldBase }),
  z.object({ type: z.literal('text'), ...fieldBase }),
  /** Where the litres go; suggested parts add up to the planned harvest. */
  z.object({
    type: z.literal('parts'),
    ...fieldBase,
    maximumL: z.number(),
    likelyMaximumL: z.number(),
    suggested: z.array(z.extend(HarvestPartSchema, { name: z.string() })),
  }),
])
export type TaskField = z.infer<typeof TaskFieldSchema>

/** The value of a count field: the same words as a count fact, without the target. */
export const CountValueSchema = z.omit(CountDataSchema, { of: true })
export type CountValue = z.infer<typeof CountValueSchema>

/** One line of how it is done; a heading stands over the lines behind it, up to the next heading. */
export const TaskStepSchema = z.extend(PhraseSchema, { isHeading: z.optional(z.boolean()) })
export type TaskStep = z.infer<typeof TaskStepSchema>

/** What the engine says of one due action, before anybody has touched it. */
export const TaskContentSchema = z.object({
  verb: z.enum(verbs),
  title: TaskTitleSchema,
  /** The large number on the line; null when there is only something to do or to look at. */
  amount: z.nullable(QuantitySchema),
  amountOf: z.nullable(z.string()),
  steps: z.array(TaskStepSchema),
  cautions: z.array(z.string()),
  fields: z.array(TaskFieldSchema),
  because: z.array(BecauseSchema),
  /** What it asks somebody to know by sight. */
  looks: z.optional(z.array(z.enum(photoLooks))),
})
export type TaskContent = z.infer<typeof TaskContentSchema>

export const SignOffViewSchema = z.object({
  id: IdSchema,
  byName: z.string(),
  byUserId: z.string(),
  doneAt: InstantSchema,
  receivedAt: InstantSchema,
  values: z.record(z.string(), z.unknown()),
  shownAmount: z.nullable(QuantitySchema),
  /** Done again by a second person who really did it too. */
  isRepeat: z.boolean(),
  /** The task had been withdrawn or missed when this arrived; the fact stands all the same. */
  isAfterTheFact: z.boolean(),
  undoneAt: z.nullable(InstantSchema),
})

/** A task with all that it takes to do it, with or without a network. Why it is so much is asked for apart. */
export const TaskSchema = z
  .extend(z.omit(TaskContentSchema, { because: true }), {
    id: IdSchema,
    key: z.string(),
    ruleId: z.string(),
    ruleTitle: z.string(),
    subject: SubjectRefSchema,
    station: z.enum(stations),
    onDate: PlainDateSchema,
    roundId: z.string(),
    ordinal: z.int(),
    state: z.enum(taskStates),
    dueAt: InstantSchema,
    /** From here on an open task shows as late. */
    lateAt: InstantSchema,
    /** The scheduler closes an open task here. */
    closesAt: InstantSchema,
    /** Whoever may sign off may also skip; some tasks are not for a stand-in. */
    isForStandIn: z.boolean(),
    /** Skip or withdrawal, in words. */
    reason: z.nullable(z.string()),
    closedByName: z.nullable(z.string()),
    /** When it was signed off, skipped, missed or withdrawn. */
    closedAt: z.nullable(InstantSchema),
    signOffs: z.array(SignOffViewSchema),
    /** The last values of each field, newest first. */
    lastValues: z.record(z.string(), z.array(z.object({ value: z.unknown(), at: InstantSchema }))),
    /** How often the amounts were worked out again since the list was opened. */
    changes: z.array(
      z.object({
        at: InstantSchema,
        from: z.nullable(QuantitySchema),
        to: z.nullable(QuantitySchema),
        why: z.string(),
      }),
    ),
    version: z.int(),
  })
  .register(z.globalRegistry, { id: 'Task' })
export type Task = z.infer<typeof TaskSchema>

/** Why this, why this much: the chain that ends in the task's amounts. */
export const TaskWhySchema = z.object({ because: z.array(BecauseSchema) }).register(z.globalRegistry, { id: 'TaskWhy' })
export type TaskWhy = z.infer<typeof TaskWhySchema>

const OnDutySchema = z.nullable(z.object({ userId: z.string(), name: z.string() }))

export const DaySchema = z
  .object({
    date: PlainDateSchema,
    /** Today in the room, by the server's clock. */
    today: PlainDateSchema,
    rounds: z.array(z.object({ id: z.string(), name: NameSchema, startsAt: InstantSchema })),
    tasks: z.array(TaskSchema),
    /** Rules that could not be worked out, each with what is missing. */
    gaps: z.array(z.object({ ruleId: z.string(), subjectId: IdSchema, subjectName: z.string(), message: z.string() })),
    isOpened: z.boolean(),
    /** What is due from here on is done in the dark. */
    lightsOffAt: InstantSchema,
    /** Who has the room on this day, where somebody has said so. */
    onDuty: OnDutySchema,
    revision: z.int(),
  })
  .register(z.globalRegistry, { id: 'Day' })
export type Day = z.infer<typeof DaySchema>

/** Who has the room on a day; null when nobody has said so. */
export const DutySchema = z
  .object({ date: PlainDateSchema, onDuty: OnDutySchema })
  .register(z.globalRegistry, { id: 'Duty' })
export type Duty = z.infer<typeof DutySchema>

/** Takes the room for a day, gives it back (null), or, for whoever manages the room, to somebody else. */
export const TakeDutySchema = z.strictObject({ userId: z.nullable(UserIdSchema) })
export type TakeDuty = z.infer<typeof TakeDutySchema>

export const SignOffSchema = z.strictObject({
  values: withDefault(z.record(z.string(), z.unknown()), {}),
  /** When it was done; now when left out. Not in the future. */
  doneAt: z.optional(InstantSchema),
  /** The amount that stood on the screen. */
  shownAmount: z.optional(z.nullable(QuantitySchema)),
  /** Names of the fields whose improbable value was confirmed. */
  confirmed: withDefault(z.array(z.string()).check(atMost(50)), []),
  /** "I really did it too", after being told that somebody already has. */
  again: withDefault(z.boolean(), false),
})
export type SignOff = z.infer<typeof SignOffSchema>
export const SkipSchema = z.strictObject({ reason: ReasonSchema })
