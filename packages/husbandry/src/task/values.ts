import type { CountData, HarvestData } from '@fryward/shared'
import { CountValueSchema, HarvestPartSchema } from '@fryward/shared'
import { z } from 'zod'

/** Readers of checked sign-off values: each gives the value of one field, or undefined when it was left empty. */
export type Values = Record<string, unknown>

export function numberOf(values: Values, name: string): number | undefined {
  const value = values[name]
  return typeof value === 'number' ? value : undefined
}
export function textOf(values: Values, name: string): string | undefined {
  const value = values[name]
  return typeof value === 'string' && value !== '' ? value : undefined
}
export function choiceOf<C extends string>(values: Values, name: string, allowed: readonly C[]): C | undefined {
  return allowed.find((choice) => choice === values[name])
}
export function choicesOf<C extends string>(values: Values, name: string, allowed: readonly C[]): C[] {
  const value = values[name]
  return Array.isArray(value) ? allowed.filter((choice) => value.includes(choice)) : []
}
export function isYes(values: Values, name: string): boolean {
  return values[name] === true
}
export function countOf(values: Values, name: string): Omit<CountData, 'of'> | undefined {
  return values[name] === undefined ? undefined : CountValueSchema.parse(values[name])
}
export function partsOf(values: Values, name: string): HarvestData['parts'] | undefined {
  return values[name] === undefined ? undefined : z.array(HarvestPartSchema).parse(values[name])
}

/** Drops what was left empty, so that a fact says only what somebody said. */
export function given<T extends Record<string, unknown>>(data: T): { [K in keyof T]?: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(data).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]?: Exclude<T[K], undefined>
  }
}
