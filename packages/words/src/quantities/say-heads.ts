import type { FactOf } from '@fryward/shared'
import { sayWhole } from '../numbers/say-number.ts'
import type { NumberVoice } from '../voice.ts'

type Heads = FactOf<'loss'>['data']['of']

const oneOf = {
  eggs: 'egg',
  larvae: 'larva',
  juveniles: 'juvenile',
  adults: 'adult',
  culture: 'culture',
} as const satisfies Record<Heads, string>

/** Heads that were counted one by one, with what they are: "1 larva", "7 larvae". */
export const sayHeads = (number: number, of: Heads, voice: NumberVoice): string =>
  `${sayWhole(number, voice)} ${number === 1 ? oneOf[of] : of}`
