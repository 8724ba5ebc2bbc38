import type { Quantity, TaskContent } from '@fryward/shared'

const said = ({ value, unit }: Quantity): string => `${value} ${unit}`

type Drafted = { content: TaskContent } | undefined

/** The steps of a card as they stand there, each quantity in the place of its name. */
export const saidSteps = (draft: Drafted): string[] =>
  draft?.content.steps.map(({ text, quantities }) =>
    text.replaceAll(/\{(\w+)\}/g, (all, name: string) => {
      const quantity = quantities[name]
      return quantity ? said(quantity) : all
    }),
  ) ?? ['no draft']

/** Why a card asks for it: how each number joins the one before, what it is, and how much. */
export const saidWhy = (draft: Drafted): string[] =>
  draft?.content.because.map(({ joins, label, quantity, text }) => {
    const what = quantity ? `: ${said(quantity)}` : text === null ? '' : `: ${text}`
    return `${joins === null ? '' : `${joins.replaceAll('_', ' ')} `}${label}${what}`
  }) ?? ['no draft']
