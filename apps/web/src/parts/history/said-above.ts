import type { Fact } from '@fryward/shared'
import { sayTime, type Voice } from '@fryward/words'

/** A round writes many records at once: its minute and its person stand on the first line of them only. */
export const isSaidAbove = (fact: Fact, above: Fact | undefined, voice: Voice): boolean =>
  above !== undefined &&
  above.recordedByName === fact.recordedByName &&
  sayTime(above.at, voice) === sayTime(fact.at, voice)
