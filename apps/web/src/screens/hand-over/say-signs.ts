import { signs as knownSigns } from '@fryward/shared'
import { signLabels } from '@/base/words/labels.ts'

/** "foam, bad smell"; a sign this page does not know is said as it is written. */
export const saySigns = (signs: readonly string[]): string =>
  signs
    .map((sign) => {
      const known = knownSigns.find((one) => one === sign)
      return known ? signLabels[known].toLowerCase() : sign.replaceAll('_', ' ')
    })
    .join(', ')
