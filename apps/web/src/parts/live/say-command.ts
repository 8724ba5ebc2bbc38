import { commandLabels } from '@fryward/words'
import type { Queued } from '@/base/outbox/queued.ts'

const typedNames = ['text', 'reason', 'note', 'caption', 'name'] as const

/** A kept command in words: what it was to do, and the words that were typed for it. */
export function sayCommand({ command, about }: Queued): { what: string; typed: string[] } {
  const label = commandLabels[command.route]
  const typed = typedNames.flatMap((name) => {
    const value: unknown = Object(command.body)[name]
    return typeof value === 'string' && value.trim() !== '' ? [value.trim()] : []
  })
  return { what: about === '' ? label : `${label}, ${about}`, typed }
}
