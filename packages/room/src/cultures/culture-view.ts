import { addMinutes, densityAt, type RoomSnapshot } from '@fryward/husbandry'
import type { Culture, Id } from '@fryward/shared'
import type { Prisma } from '@fryward/store'
import { notFound } from '../errors.ts'
import type { Scope } from '../frame/read-in-room.ts'

type CultureRow = Prisma.CultureGetPayload<{ include: { subject: true } }>

export async function listCulturesInRoom({ tx, roomId, ctx, state }: Scope): Promise<Culture[]> {
  const rows = await tx.culture.findMany({ where: { roomId }, include: { subject: true }, orderBy: { id: 'asc' } })
  const { snapshot } = await state()
  return rows.map((row) => toCulture(row, { snapshot, now: ctx.now }))
}

export async function getCultureInRoom({ tx, roomId, ctx, state }: Scope, cultureId: Id): Promise<Culture> {
  const key = { roomId_id: { roomId, id: cultureId } }
  const row = await tx.culture.findUnique({ where: key, include: { subject: true } })
  if (!row) throw notFound('culture')
  return toCulture(row, { snapshot: (await state()).snapshot, now: ctx.now })
}

function toCulture(row: CultureRow, at: { snapshot: RoomSnapshot; now: string }): Culture {
  const { subject, roomId: _roomId, startedAt, ...culture } = row
  return {
    ...culture,
    name: subject.name,
    note: subject.note,
    startedAt: startedAt.toISOString(),
    endedAt: subject.endedAt?.toISOString() ?? null,
    endReason: subject.endReason,
    densityNow: densityNow(culture.id, at),
    version: subject.version,
  }
}

/** Null for a culture that has ended, or of which nobody has said how dense it is. */
function densityNow(cultureId: Id, { snapshot, now }: { snapshot: RoomSnapshot; now: string }): Culture['densityNow'] {
  const culture = snapshot.cultures.find((each) => each.id === cultureId)
  const density = culture ? densityAt(snapshot, culture, { at: now, until: addMinutes(now, 1) }) : null
  if (!density) return null
  return { perMl: density.densityPerMl, countedAt: density.countedAt, isEstimated: density.isEstimated }
}
