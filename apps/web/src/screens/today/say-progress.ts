import type { Task } from '@fryward/shared'
import { progressOf, whoDidWhat } from './arrange.ts'

/** "seen to, all by you"; "seen to: The weekday caretaker 15, you 8". Stands after "23 of 48". */
export function sayWho(tasks: Task[], me: string | undefined): string {
  const who = whoDidWhat(tasks)
  const [first] = who
  if (!first) return 'seen to'
  const named = (name: string) => (name === me ? 'you' : name)
  if (who.length === 1 && first.done === progressOf(tasks).done)
    return first.name === me ? `seen to, ${first.done === 1 ? '' : 'all '}by you` : `seen to: ${first.name}`
  return `seen to: ${who.map((one) => `${named(one.name)} ${one.done}`).join(', ')}`
}
