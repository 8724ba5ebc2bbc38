import type { TaskContent } from '@fryward/shared'

/** A draft's steps with their numbers put in, as `2.5 L`: what is said to whoever stands there, one line a step. */
export const saidSteps = (draft: { content: Pick<TaskContent, 'steps'> } | undefined): string[] =>
  draft?.content.steps.map(({ text, quantities }) =>
    text.replace(/\{(\w+)\}/g, (place, name: string) => {
      const quantity = quantities[name]
      return quantity ? `${quantity.value} ${quantity.unit}` : place
    }),
  ) ?? []
