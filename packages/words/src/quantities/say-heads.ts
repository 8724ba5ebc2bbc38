import type { CareKind, FactOf } from '@fryward/shared'
import { broodWords } from '../labels/brood.ts'
import { sayWhole } from '../numbers/say-number.ts'
import type { NumberVoice } from '../voice.ts'

type Heads = FactOf<'loss'>['data']['of']

/** Heads of what, and where their eggs were as far as that is known. */
type Of = { of: Heads; care?: CareKind | undefined }

const oneOf = {
  eggs: 'egg',
  juveniles: 'juvenile',
  adults: 'adult',
  culture: 'culture',
} as const satisfies Record<Exclude<Heads, 'larvae'>, string>

/** Heads that were counted one by one, with what they are: "1 larva", "7 larvae", "7 young" of a parent that carried them. */
export function sayHeads(number: number, { of, care }: Of, voice: NumberVoice): string {
  const { one, many } = of === 'larvae' ? broodWords(care) : { one: oneOf[of], many: of }
  return `${sayWhole(number, voice)} ${number === 1 ? one : many}`
}
