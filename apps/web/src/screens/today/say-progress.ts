import type { Task } from '@fryward/shared'
import { progressOf, whoDidWhat } from './arrange.ts'

/** Names stand in the middle of a sentence: "The weekday caretaker" is said "the weekday caretaker". */
export const inSentence = (name: string, me: string | undefined) =>
  name === me ? 'you' : name.replace(/^The /, 'the ')

/** "seen to, all by you"; "seen to: 15 by the weekday caretaker, 8 by you". Stands after "23 of 48". */
export function sayWho(tasks: Task[], me: string | undefined): string {
  const who = whoDidWhat(tasks)
  const [first] = who
  if (!first) return 'seen to'
  if (who.length === 1 && first.done === progressOf(tasks).done)
    return `seen to, ${first.done === 1 ? '' : 'all '}by ${inSentence(first.name, me)}`
  return `seen to: ${who.map((one) => `${one.done} by ${inSentence(one.name, me)}`).join(', ')}`
}
