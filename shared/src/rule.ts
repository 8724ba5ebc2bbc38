import * as z from 'zod/mini'
import { InstantSchema, maximumInteger, QuantitySchema } from './primitives.ts'
import { wholeBetween } from './shapes.ts'
import { TaskTitleSchema } from './title.ts'
import { stations, subjectKinds, units } from './vocabulary.ts'

/** Where a default comes from. */
export const SourceSchema = z.object({
  kind: z.enum(['published', 'common_practice', 'from_memory', 'assumption']),
  citation: z.string(),
})
export type Source = z.infer<typeof SourceSchema>

export const RuleParameterSchema = z.object({
  name: z.string(),
  label: z.string(),
  type: z.enum(['number', 'boolean', 'choice']),
  unit: z.nullable(z.enum(units)),
  minimum: z.nullable(z.number()),
  maximum: z.nullable(z.number()),
  choices: z.nullable(z.array(z.string())),
  default: z.union([z.number(), z.boolean(), z.string()]),
  value: z.union([z.number(), z.boolean(), z.string()]),
  source: SourceSchema,
})
export type RuleParameter = z.infer<typeof RuleParameterSchema>

/** A rule as a sentence with its parameters in place: `{name}` in the sentence stands for a parameter. */
export const RuleSchema = z
  .object({
    id: z.string(),
    title: z.string(),
    sentence: z.string(),
    subject: z.enum(subjectKinds),
    station: z.enum(stations),
    isOn: z.boolean(),
    isOnByDefault: z.boolean(),
    parameters: z.array(RuleParameterSchema),
    changedByName: z.nullable(z.string()),
    changedAt: z.nullable(InstantSchema),
    version: z.int(),
  })
  .register(z.globalRegistry, { id: 'Rule' })
export type Rule = z.infer<typeof RuleSchema>

export const ChangeRuleSchema = z.strictObject({
  isOn: z.boolean(),
  parameters: z.record(z.string(), z.union([z.number(), z.boolean(), z.string()])),
  /** 0 while the room has never changed this rule. */
  version: wholeBetween(0, maximumInteger),
})
export type ChangeRule = z.infer<typeof ChangeRuleSchema>

const PreviewedTaskSchema = z.object({
  title: TaskTitleSchema,
  subjectName: z.string(),
  amount: z.nullable(QuantitySchema),
})

/** What tomorrow's list would be with the change, against what it is without. */
export const RulePreviewSchema = z
  .object({
    date: z.iso.date(),
    added: z.array(PreviewedTaskSchema),
    removed: z.array(PreviewedTaskSchema),
    changed: z.array(
      z.object({
        title: TaskTitleSchema,
        subjectName: z.string(),
        from: z.nullable(QuantitySchema),
        to: z.nullable(QuantitySchema),
      }),
    ),
    unchanged: z.int(),
  })
  .register(z.globalRegistry, { id: 'RulePreview' })
export type RulePreview = z.infer<typeof RulePreviewSchema>
export const RuleIdSchema = z.string().check(z.regex(/^[a-z][a-z0-9-]{2,59}$/, 'a rule id such as rotifer-feed'))
