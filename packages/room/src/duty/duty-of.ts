import type { Day, Id, PlainDate } from '@fryward/shared'
import { type Transaction, toDateColumn } from '@fryward/store'

/** Who has the room on a day; null when nobody has said so. */
export async function dutyOf(
  tx: Transaction,
  { roomId, date }: { roomId: Id; date: PlainDate },
): Promise<Day['onDuty']> {
  const duty = await tx.duty.findUnique({
    where: { roomId_onDate: { roomId, onDate: toDateColumn(date) } },
    include: { membership: { include: { user: { select: { name: true } } } } },
  })
  return duty && { userId: duty.userId, name: duty.membership.user.name }
}
