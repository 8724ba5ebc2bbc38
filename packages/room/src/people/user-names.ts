import type { Transaction } from '@fryward/store'
import { nameOrLeft } from '../state/person-name.ts'

/** Names of people by user id; records of the clock itself have no user. */
export async function userNames(tx: Transaction, userIds: readonly string[]): Promise<ReadonlyMap<string, string>> {
  const unique = [...new Set(userIds)]
  if (unique.length === 0) return new Map()
  const users = await tx.user.findMany({ where: { id: { in: unique } }, select: { id: true, name: true } })
  return new Map(users.map((user) => [user.id, user.name]))
}

export const nameOf = (names: ReadonlyMap<string, string>, userId: string | null): string =>
  nameOrLeft(userId, userId === null ? null : (names.get(userId) ?? null))
