import type { Source, Unit } from '@fryward/shared'
import { z } from 'zod'

/** A rule's parameter: its default, where the default comes from, and what a room may set it to. */
export type NumberParameter = {
  type: 'number'
  label: string
  unit: Unit | null
  default: number
  minimum: number
  maximum: number
  source: Source
}
export type BooleanParameter = { type: 'boolean'; label: string; default: boolean; source: Source }
export type ChoiceParameter<C extends string = string> = {
  type: 'choice'
  label: string
  choices: readonly C[]
  default: C
  source: Source
}
export type Parameter = NumberParameter | BooleanParameter | ChoiceParameter
export type Parameters = Record<string, Parameter>

export type ParameterValues<P extends Parameters> = {
  [K in keyof P]: P[K] extends NumberParameter
    ? number
    : P[K] extends BooleanParameter
      ? boolean
      : P[K] extends ChoiceParameter<infer C>
        ? C
        : never
}

export const published = (citation: string): Source => ({ kind: 'published', citation })
export const commonPractice = (citation = 'common practice'): Source => ({ kind: 'common_practice', citation })
export const fromMemory = (citation: string): Source => ({ kind: 'from_memory', citation })
export const assumption = (citation: string): Source => ({ kind: 'assumption', citation })

/** How a source reads beside its number. */
export function sourceText(source: Source): string {
  const kinds = {
    published: '',
    common_practice: 'common practice',
    from_memory: 'from memory',
    assumption: 'assumption',
  } as const
  const kind = kinds[source.kind]
  if (kind === '' || source.citation === kind) return source.citation
  return `${source.citation} (${kind})`
}

/** The zod schema of one rule's parameters; unknown names are refused. */
export function parameterSchema(parameters: Parameters) {
  const shape: Record<string, z.ZodType> = {}
  for (const [name, parameter] of Object.entries(parameters)) {
    if (parameter.type === 'number') shape[name] = z.number().min(parameter.minimum).max(parameter.maximum).optional()
    else if (parameter.type === 'boolean') shape[name] = z.boolean().optional()
    else shape[name] = z.enum(parameter.choices as [string, ...string[]]).optional()
  }
  return z.strictObject(shape)
}

/** Defaults overlaid with what the room has set; a stored value that no longer fits falls back to the default. */
export function resolveParameters<P extends Parameters>(
  parameters: P,
  changes: Record<string, unknown>,
): ParameterValues<P> {
  const values: Record<string, unknown> = {}
  for (const [name, parameter] of Object.entries(parameters)) {
    const change = changes[name]
    // Most rooms change little, so a schema is made only where there is something to hold against it.
    const fits = change !== undefined && parameterSchema({ [name]: parameter }).safeParse({ [name]: change }).success
    values[name] = fits ? change : parameter.default
  }
  return values as ParameterValues<P>
}

type EveryDays = Pick<NumberParameter, 'default' | 'source'> & Partial<Pick<NumberParameter, 'label' | 'maximum'>>

/** The parameter of a rule that asks for the same thing every so many days. */
export function everyDaysParameter({ default: days, source, label, maximum = 366 }: EveryDays) {
  return {
    type: 'number',
    label: label ?? 'from one time to the next',
    unit: 'days',
    minimum: 1,
    maximum,
    default: days,
    source,
  } satisfies NumberParameter
}

/** The most of a tank's water that is changed at once against what a test read. */
export const mostChangedAtOnce = {
  type: 'number',
  label: 'at most at once',
  unit: 'share',
  default: 0.5,
  minimum: 0.1,
  maximum: 0.9,
  source: commonPractice('half at once; again after the next test'),
} satisfies NumberParameter
