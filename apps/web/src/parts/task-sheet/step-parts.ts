import type { TaskStep } from '@fryward/shared'

export type StepPart = { heading: TaskStep | undefined; steps: TaskStep[] }

/** A task's steps with the heading that they stand under; those before the first heading have none. */
export function stepParts(steps: readonly TaskStep[]): StepPart[] {
  const parts: StepPart[] = []
  for (const step of steps) {
    const last = parts.at(-1)
    if (step.isHeading) parts.push({ heading: step, steps: [] })
    else if (last) last.steps.push(step)
    else parts.push({ heading: undefined, steps: [step] })
  }
  return parts
}
