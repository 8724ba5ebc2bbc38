import { type Actor, actorUserId } from '../context.ts'
import { RoomError } from '../errors.ts'

/** The person who acts; the clock has no hands. */
export function personOf(actor: Actor): string {
  const userId = actorUserId(actor)
  if (userId === null) throw new RoomError('not_allowed', 'Only a person does this.')
  return userId
}
