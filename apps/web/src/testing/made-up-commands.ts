import type { Command } from '@fryward/shared'
import { CommandSchema } from '@fryward/shared/commands'
import type { Queued } from '@/base/outbox/queued.ts'
import { newId } from './made-up.ts'

export const carla = { id: 'carla', name: 'Carla' }
export const sam = { id: 'sam', name: 'Sam' }

const about = (personId: string) => ({ id: newId(), personId, madeAt: '2026-11-29T07:00:00.000Z' })
const commandOf = (command: unknown): Command => CommandSchema.parse(command) as Command

/** A note in a room, kept on a device; invented. */
export function keptNote(roomId: string, person = carla, part: Partial<Queued> = {}): Queued {
  const command = commandOf({ ...about(person.id), route: 'writeNote', params: { roomId }, body: { text: 'Hums' } })
  return { command, personName: person.name, about: '', path: `/rooms/${roomId}/hand-over`, ...part }
}

/** A photo of the room itself; invented. */
export function keptPhoto(roomId: string, person = carla): Queued {
  const image = new Blob(['bytes'], { type: 'image/jpeg' })
  const body = { subjectId: roomId, caption: '', image }
  const command = commandOf({ ...about(person.id), route: 'addPhoto', params: { roomId }, body })
  return { command, personName: person.name, about: '', path: `/rooms/${roomId}/room` }
}
