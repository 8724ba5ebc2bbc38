import type { Fact } from '@fryward/shared'
import { sayTime } from '@/base/dates/say.ts'

/** A round writes many records at once: its minute and its person stand on the first line of them only. */
export const isSaidAbove = (fact: Fact, above: Fact | undefined, timeZone: string): boolean =>
  above !== undefined &&
  above.recordedByName === fact.recordedByName &&
  sayTime(above.at, timeZone) === sayTime(fact.at, timeZone)
