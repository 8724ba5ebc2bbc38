import { type Because, type TaskContent, TaskContentSchema, type TaskField, type TaskStep } from '@fryward/shared'
import type { DayDrafts } from '../engine/draft-day.ts'

/**
 * Hands the drafts of a day through, unless one is no task as the wire has it, has a line that says nothing, or a step whose
 * numbers are missing: whoever stands there would not know that they should be there.
 */
export function wholeDrafts(day: DayDrafts): DayDrafts {
  for (const { ruleId, content } of day.drafts) {
    TaskContentSchema.parse(content)
    if (content.steps.length === 0) throw new Error(`${ruleId}: does not say how`)
    if (content.because.length === 0) throw new Error(`${ruleId}: does not say why`)
    for (const { text, quantities } of content.steps)
      if (placesOf(text).join() !== Object.keys(quantities).sort().join())
        throw new Error(`${ruleId}: the numbers of a step are not those of its places: "${text}"`)
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

/** The places that a step keeps for its numbers, each once: `{volume}`. */
const placesOf = (text: string): string[] =>
  [...new Set([...text.matchAll(/\{(\w+)\}/g)].map(([, name]) => name ?? ''))].sort()

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
    ...linesOfTitle(content.title),
    ...(content.amountOf === null ? [] : [['what the amount is of', content.amountOf] as [string, string]]),
    ...content.steps.map(({ text }): [string, string] => ['a step', text]),
    ...content.cautions.map((text): [string, string] => ['a caution', text]),
    ...content.fields.flatMap(linesOfField),
    ...content.because.flatMap(linesOfLink),
  ]
}

function linesOfTitle(title: TaskContent['title']): [string, string][] {
  if ('text' in title) return [['the title', title.text]]
  const details = title.details.flatMap((detail) =>
    detail.kind === 'amount' ? [detail.of] : 'words' in detail ? [detail.words].flat() : [],
  )
  const names = title.to.flatMap((to) => ('name' in to ? [to.name] : []))
  return [title.thing, title.from, ...names, ...details].flatMap((text): [string, string][] =>
    text === null ? [] : [['the title', text]],
  )
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
