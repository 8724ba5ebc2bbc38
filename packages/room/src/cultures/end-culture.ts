import type { Culture, EndCulture, Id } from '@fryward/shared'
import type { Context } from '../context.ts'
import { endLinksOf } from '../feed-links/end-links-of.ts'
import { endSubject } from '../frame/subject-row.ts'
import { assertFresh, definedFields } from '../frame/versioned.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { getCultureInRoom } from './culture-view.ts'

/** Ends a culture; batches fed from it are no longer. How often cultures crash here is learned from the cause. */
export async function endCulture({
  ctx,
  roomId,
  cultureId,
  input,
}: {
  ctx: Context
  roomId: Id
  cultureId: Id
  input: EndCulture
}): Promise<Culture> {
  return writeInRoom(
    { ctx, roomId, permission: 'manage' },
    async (work) => {
      const { reason, cause, version } = input
      const before = await getCultureInRoom(work, cultureId)
      assertFresh(before, version, before.name)
      const links = await endLinksOf(work, { cultureId })
      const key = { roomId_id: { roomId, id: cultureId } }
      await work.tx.culture.update({ where: key, data: { endCause: cause ?? null } })
      await endSubject(work, { id: cultureId, reason, detail: definedFields({ cause, links }) })
    },
    (work) => getCultureInRoom(work, cultureId),
  )
}
