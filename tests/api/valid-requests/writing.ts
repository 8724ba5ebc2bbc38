import type { RouteId } from '@fryward/shared'
import { z } from 'zod'
import type { Person, World } from '../../support/world.ts'
import type { FullRoom } from '../full-room.ts'
import { type RawRequest, send } from '../send.ts'

/** What a request is written for: the room it asks, who sends it, and a number that makes its names new. */
export type Writing = { world: World; full: FullRoom; as: Person; serial: number }
export type Write = (writing: Writing) => RawRequest | Promise<RawRequest>
/** What a file of this folder holds; all of them together hold every route. */
export type Requests = Partial<Record<RouteId, Write>>

export const inRoom = ({ full }: Writing, more: Record<string, string> = {}) => ({ roomId: full.roomId, ...more })

/** An address of its own, where a few tries a minute are what one gets. */
export const addressFor = ({ serial }: Writing) => `10.7.${Math.floor(serial / 250)}.${(serial % 250) + 1}`

async function versionOf({ world, full }: Writing, id: string): Promise<number> {
  const row = await world.database.prisma.subject.findUniqueOrThrow({
    where: { roomId_id: { roomId: full.roomId, id } },
  })
  return row.version
}

type Creation = readonly [id: RouteId, write: Write]

/** What a request of that kind makes, asked for by the owner: something nobody has ended, linked or struck out yet. */
export async function made([id, write]: Creation, writing: Writing) {
  const { json, text } = await send(writing.world, writing.full.owner, id, await write(writing))
  const parsed = MadeSchema.safeParse(json)
  if (!parsed.success) throw new Error(`${id} was refused: ${text}`)
  return parsed.data
}
const MadeSchema = z.object({ id: z.string(), version: z.number() })

export const end = (param: string, creation: Creation) => async (writing: Writing) => {
  const { id, version } = await made(creation, writing)
  return { params: inRoom(writing, { [param]: id }), body: { reason: 'no longer needed', version } }
}
export const change =
  (param: string, thing: 'pairTank' | 'culture' | 'pair' | 'clutch' | 'batch', body: object) =>
  async (writing: Writing) => {
    const { id } = writing.full[thing]
    return { params: inRoom(writing, { [param]: id }), body: { ...body, version: await versionOf(writing, id) } }
  }

/** Who asks, or the owner where they may record nothing. */
export async function recorder({ world, full, as }: Writing): Promise<Person> {
  const membership = await world.database.prisma.membership.findFirst({
    where: { roomId: full.roomId, userId: as.userId, role: { not: 'viewer' } },
  })
  return membership ? as : full.owner
}
