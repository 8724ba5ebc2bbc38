import { type Because, type TaskContent, TaskContentSchema, type TaskField, type TaskStep } from '@fryward/shared'
import type { DayDrafts } from '../engine/draft-day.ts'

/**
 * Hands the drafts of a day through, unless one is no task as the wire has it, or has a line that says nothing: whoever
 * stands there would not know that it should.
 */
export function wholeDrafts(day: DayDrafts): DayDrafts {
  for (const { ruleId, content } of day.drafts) {
    TaskContentSchema.parse(content)
    if (content.steps.length === 0) throw new Error(`${ruleId}: does not say how`)
    for (const [index, { text, isHeading }] of content.steps.entries())
      if (isHeading && isNothingUnder(content.steps[index + 1]))
        throw new Error(`${ruleId}: "${text}" stands over nothing`)
    for (const { text } of content.steps)
      if (text.endsWith(':')) throw new Error(`${ruleId}: "${text}" is a heading and does not say so`)
    for (const takenMl of samplesOf(content))
      if (!content.fields.some((field) => field.type === 'count' && field.volumeMl === takenMl))
        throw new Error(`${ruleId}: a sample of ${takenMl} mL is counted as another`)
  }
  for (const { ruleId, content } of day.drafts)
    for (const [place, text] of linesOf(content))
      if (!saysSomething(text)) throw new Error(`${ruleId}: ${place} says "${text}"`)
  for (const { ruleId, message } of day.gaps)
    if (!saysSomething(message)) throw new Error(`${ruleId}: a gap says nothing`)
  return day
}

const isNothingUnder = (next: TaskStep | undefined): boolean => next === undefined || next.isHeading === true

/** Millilitres that are to be taken and counted: what is typed is divided by what its field says. */
const samplesOf = ({ steps, fields }: TaskContent): number[] =>
  fields.some(({ type }) => type === 'count')
    ? steps.flatMap(({ quantities: { volume, sample } }) =>
        [volume, sample].flatMap((taken) => (taken?.unit === 'mL' ? [taken.value] : [])),
      )
    : []

const saysSomething = (text: string): boolean => /[\p{L}\d]/u.test(text) && !/undefined|NaN|^ | $| {2}|, *,/.test(text)

function linesOf(content: TaskContent): [place: string, text: string][] {
  return [
    ...(content.amountOf === null ? [] : [['what the amount is of', content.amountOf] as [string, string]]),
    ...content.steps.map(({ text }): [string, string] => ['a step', text]),
    ...content.cautions.map((text): [string, string] => ['a caution', text]),
    ...content.fields.flatMap(linesOfField),
    ...content.because.flatMap(linesOfLink),
  ]
}

const linesOfField = (field: TaskField): [string, string][] => [
  ['the name of a field', field.name],
  [`the label of ${field.name}`, field.label],
  ...(field.help === null ? [] : [[`the help of ${field.name}`, field.help] as [string, string]]),
  ...('choices' in field
    ? field.choices.flatMap(({ value, label }): [string, string][] => [
        [`a choice of ${field.name}`, value],
        [`the label of ${value}`, label],
      ])
    : []),
]

/** A link of "why", and where it was read. */
function linesOfLink({ label, origin }: Because): [string, string][] {
  const read =
    origin.kind === 'fact'
      ? [origin.byName]
      : origin.kind === 'setting'
        ? [origin.where]
        : origin.kind === 'computed'
          ? [origin.by, ...(origin.source === null ? [] : [origin.source])]
          : origin.kind === 'food_plan'
            ? []
            : [origin.source]
  return [['a link of "why"', label], ...read.map((text): [string, string] => [`where "${label}" was read`, text])]
}
