import type { Duty, Id, PlainDate } from '@fryward/shared'
import { type Transaction, toDateColumn } from '@fryward/store'
import { mayAs } from '../frame/permission.ts'

/** Who has the room on a day; null when nobody has said so, or who did may sign nothing off any more. */
export async function dutyOf(
  tx: Transaction,
  { roomId, date }: { roomId: Id; date: PlainDate },
): Promise<Duty['onDuty']> {
  const duty = await tx.duty.findUnique({
    where: { roomId_onDate: { roomId, onDate: toDateColumn(date) } },
    include: { membership: { include: { user: { select: { name: true } } } } },
  })
  if (!duty || !mayAs(duty.membership.role, 'sign_off')) return null
  return { userId: duty.userId, name: duty.membership.user.name }
}
