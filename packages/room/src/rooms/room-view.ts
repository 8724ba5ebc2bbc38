import { type Id, LocaleSchema, type Role, type Room, RoundsSchema, StationOrderSchema } from '@fryward/shared'
import type { Transaction } from '@fryward/store'
import { noSuchRoom } from '../errors.ts'

export async function getRoomRow({ tx, roomId, role }: { tx: Transaction; roomId: Id; role: Role }): Promise<Room> {
  const row = await tx.room.findUnique({ where: { id: roomId } })
  if (!row) throw noSuchRoom()
  const { createdAt: _createdAt, locale, rounds, stationOrder, ...room } = row
  return {
    ...room,
    locale: LocaleSchema.parse(locale),
    rounds: RoundsSchema.parse(rounds),
    stationOrder: StationOrderSchema.parse(stationOrder),
    myRole: role,
  }
}
