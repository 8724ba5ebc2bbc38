import type { Command, CommandAnswer, CommandId, CommandOf, Id } from '@fryward/shared'
import { newId } from '@/base/api/new-id.ts'
import { serverNow } from '@/base/api/server-clock.ts'
import type { SignedIn } from '@/base/room/person-context.tsx'
import { dropDraft, takeDraft } from './drafts.ts'
import type { Meant } from './meant.ts'
import { outbox } from './this-outbox.ts'

type Given<K extends CommandId> = { route: K; person: SignedIn; meant: Meant<K>; ids: Map<string, Id> }

/**
 * Makes a command of what is meant, keeps and sends it. The same route with the same parameters meant again before there
 * is an answer is the same command.
 * @throws ApiProblem what the API said against it.
 */
export async function putCommand<K extends CommandId>({
  route,
  person,
  meant,
  ids,
}: Given<K>): Promise<CommandAnswer<K>> {
  const { params, body, onProgress, ...wayBack } = meant
  const place = JSON.stringify(params)
  const id = ids.get(place) ?? newId()
  ids.set(place, id)
  const command: CommandOf<K> = { id, personId: person.id, madeAt: serverNow().toISOString(), route, params, body }
  const draft = wayBack.draftKey === undefined ? undefined : takeDraft(wayBack.draftKey)
  const path = `${window.location.pathname}${window.location.search}`
  try {
    const queued = { command: command as Command, personName: person.name, about: '', path, ...wayBack, draft }
    const answer = await outbox.put(queued, onProgress)
    // What was changed in its form meanwhile came too late to be meant. Once that form has gone, a draft is another one's.
    if (wayBack.draftKey !== undefined && ids.has(place)) dropDraft(wayBack.draftKey)
    return answer as CommandAnswer<K>
  } finally {
    ids.delete(place)
  }
}

/** Whoever asked has gone from the screen. */
export function leaveCommands(ids: Id[]): void {
  for (const id of ids) outbox.leave(id)
}
