import { signs as knownSigns } from '@fryward/shared'
import { signLabels } from '../labels/facts.ts'
import { sayCode } from '../phrases/code.ts'

/** "foam, bad smell"; a sign that this version does not know is said as it is written. */
export const saySigns = (signs: readonly string[]): string =>
  signs
    .map((sign) => {
      const known = knownSigns.find((one) => one === sign)
      return known ? signLabels[known].toLowerCase() : sayCode(sign)
    })
    .join(', ')
