import { daysBetween, groupNumbers, localDate } from '@fryward/husbandry'
import type { Id, JuvenileGroup } from '@fryward/shared'
import { fromDateColumn } from '@fryward/store'
import { notFound } from '../errors.ts'
import type { Scope } from '../frame/read-in-room.ts'
import { closedPastOf } from '../state/closed-past.ts'

export async function listJuvenileGroupsInRoom(scope: Scope): Promise<JuvenileGroup[]> {
  const { tx, roomId, ctx } = scope
  const state = await scope.state()
  const { snapshot } = state
  const past = await closedPastOf(scope, state)
  const today = localDate({ timeZone: snapshot.room.timeZone, at: ctx.now })
  const rows = await tx.juvenileGroup.findMany({
    where: { roomId },
    include: { subject: true },
    orderBy: [{ settledOn: 'desc' }, { id: 'desc' }],
  })
  return rows.map(({ subject, roomId: _roomId, settledOn, ...group }) => {
    const numbers = groupNumbers(subject.endedAt ? past : snapshot, group)
    return {
      ...group,
      name: subject.name,
      settledOn: fromDateColumn(settledOn),
      ageDays: Math.max(0, daysBetween(fromDateColumn(settledOn), today)),
      numberNow: numbers.now,
      lost: numbers.lost,
      ...numbers.byOutcome,
      note: subject.note,
      endedAt: subject.endedAt?.toISOString() ?? null,
      version: subject.version,
    }
  })
}

export async function getJuvenileGroupInRoom(scope: Scope, groupId: Id): Promise<JuvenileGroup> {
  const group = (await listJuvenileGroupsInRoom(scope)).find((each) => each.id === groupId)
  if (!group) throw notFound('juvenile group')
  return group
}
