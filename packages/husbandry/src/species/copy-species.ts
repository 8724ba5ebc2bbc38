import type { z } from 'zod'
import { getSpecies, type SpeciesInput } from './catalogue.ts'
import { type SpeciesProfile, SpeciesProfileSchema } from './schema.ts'
import type { Source } from './source.ts'

/** Any part of a profile; lists and values with their source are replaced whole. */
export type SpeciesChanges = DeepPartial<SpeciesProfile>
type DeepPartial<T> = T extends readonly unknown[] | { source: Source }
  ? T
  : T extends object
    ? { [K in keyof T]?: DeepPartial<T[K]> }
    : T

/**
 * A room's own profile: a copy with changes, checked by SpeciesProfileSchema.
 * Without a new id the copy is called "<id>-copy". A changed value brings its own source.
 * @throws RangeError naming each field that is wrong, its value and what is allowed.
 */
export function copySpecies(profile: SpeciesInput, changes: SpeciesChanges): SpeciesProfile {
  const original = getSpecies(profile)
  const merged = merge(original, { id: `${original.id}-copy`, ...changes, copiedFrom: original.id })
  const result = SpeciesProfileSchema.safeParse(merged)
  if (result.success) return result.data
  throw new RangeError(result.error.issues.map((issue) => describe(issue, merged)).join('; '))
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

function merge(base: unknown, changes: unknown): unknown {
  if (changes === undefined) return base
  // A new value must not inherit the old one's source.
  if (!isRecord(base) || !isRecord(changes) || 'source' in base) return changes
  const merged: Record<string, unknown> = { ...base }
  for (const [key, change] of Object.entries(changes)) merged[key] = merge(base[key], change)
  return merged
}

function describe(issue: z.core.$ZodIssue, input: unknown): string {
  const step = (at: unknown, key: PropertyKey): unknown =>
    typeof at === 'object' && at !== null ? Reflect.get(at, key) : undefined
  const value = issue.path.reduce(step, input)
  const where = ['changes', ...issue.path].join('.')
  // An unknown key is named by the message; its value would be the whole profile.
  return issue.code === 'unrecognized_keys'
    ? `${where}: ${issue.message}`
    : `${where}: ${JSON.stringify(value)} is wrong, ${issue.message}`
}
