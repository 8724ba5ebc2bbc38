import type { NumberVoice } from '../voice.ts'
import { readNumber } from './read-number.ts'
import { typeNumber } from './type-number.ts'

/** Both ways to write an unclear number so that nobody can misread it; none where the text is clear. */
export function clearWays(text: string, voice: NumberVoice): string[] {
  const read = readNumber(text, voice)
  return read.is === 'unclear' ? read.readings.map((one) => typeNumber(one, voice)) : []
}

/** "is it 1200 or 1,2?" */
export const askWhich = (text: string, voice: NumberVoice): string => `is it ${clearWays(text, voice).join(' or ')}?`
