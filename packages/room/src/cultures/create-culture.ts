import type { Culture, Id, NewCulture } from '@fryward/shared'
import type { Context } from '../context.ts'
import { invalid } from '../errors.ts'
import { assertNotInFuture, insertFact } from '../facts/insert-fact.ts'
import { insertSubject } from '../frame/subject-row.ts'
import { type Work, writeInRoom } from '../frame/write-in-room.ts'
import { getCultureInRoom } from './culture-view.ts'

/** Starts a culture, with the density it was started at when that is known. */
export async function createCulture({
  ctx,
  roomId,
  input,
}: {
  ctx: Context
  roomId: Id
  input: NewCulture
}): Promise<Culture> {
  return writeInRoom(
    { ctx, roomId, permission: 'manage' },
    async (work) => {
      const id = await insertCulture(work, input)
      return id
    },
    getCultureInRoom,
  )
}

/** @param signOffId of the sign-off that started it; taken back with that. */
export async function insertCulture(work: Work, input: NewCulture, signOffId?: Id): Promise<Id> {
  const { name, note, startedAt = work.ctx.now, startDensityPerMl, ...culture } = input
  if (culture.kind === 'rotifer' && !culture.strain)
    throw invalid('strain', 'Say the strain of a rotifer culture: L, S or SS.')
  assertNotInFuture(work, startedAt, 'startedAt')
  await assertLinks(work, culture)
  const id = await insertSubject(work, { kind: 'culture', name, note })
  await work.tx.culture.create({ data: { roomId: work.roomId, id, startedAt, ...culture } })
  if (startDensityPerMl !== undefined || culture.parentCultureId) {
    const data = { densityPerMl: startDensityPerMl, fromCultureId: culture.parentCultureId ?? undefined }
    await insertFact(work, { fact: { kind: 'inoculation', subjectId: id, data }, at: startedAt, signOffId })
  }
  work.audit({ action: 'culture.create', subjectId: id, detail: { name, ...culture }, why: `${name} was started` })
  return id
}

export async function assertLinks(
  work: Work,
  links: { concentrateId?: Id | null | undefined; parentCultureId?: Id | null | undefined },
): Promise<void> {
  const { tx, roomId } = work
  if (
    links.concentrateId &&
    !(await tx.concentrate.findUnique({ where: { roomId_id: { roomId, id: links.concentrateId } } }))
  )
    throw invalid('concentrateId', 'There is no such bottle of concentrate in this room.', links.concentrateId)
  if (
    links.parentCultureId &&
    !(await tx.culture.findUnique({ where: { roomId_id: { roomId, id: links.parentCultureId } } }))
  )
    throw invalid('parentCultureId', 'There is no such culture in this room.', links.parentCultureId)
}
