import type { Because, TaskContent } from '@fryward/shared'

/** The links of "why" as one reads them down the page: how each joins, its number or words, and what that is of. */
export const whyLines = (draft: { content: Pick<TaskContent, 'because'> } | undefined): string[] =>
  draft?.content.because.map(lineOf) ?? []

const lineOf = ({ joins, quantity, text, label }: Because): string =>
  [joins?.replace('_', ' '), quantity && `${quantity.value} ${quantity.unit}`, label, text]
    .filter((part) => part !== null && part !== undefined)
    .join(' ')
