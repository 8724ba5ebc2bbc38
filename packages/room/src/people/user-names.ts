import type { Transaction } from '@fryward/store'

/** Names of people by user id; records of the clock itself have no user. */
export async function userNames(tx: Transaction, userIds: readonly string[]): Promise<ReadonlyMap<string, string>> {
  const unique = [...new Set(userIds)]
  if (unique.length === 0) return new Map()
  const users = await tx.user.findMany({ where: { id: { in: unique } }, select: { id: true, name: true } })
  return new Map(users.map((user) => [user.id, user.name]))
}

export const nameOf = (names: ReadonlyMap<string, string>, userId: string | null): string =>
  nameOrLeft(userId, userId === null ? null : (names.get(userId) ?? null))

/** A name as read beside the id of its account: null where the account is gone. */
export const nameOrLeft = (userId: string | null, name: string | null): string =>
  userId === null ? 'Fryward' : (name ?? 'somebody who has left')
