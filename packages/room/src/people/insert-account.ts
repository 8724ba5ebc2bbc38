import { lockWord, type Transaction } from '@fryward/store'
import { uuidv7 } from 'uuidv7'
import { RoomError } from '../errors.ts'

export type NewAccount = { name: string; email: string; passwordHash: string }

/** A person who signs in by email and password, in the shape that the sign-in library reads. */
export async function insertAccount(
  tx: Transaction,
  { account, now }: { account: NewAccount; now: string },
): Promise<string> {
  const email = account.email.toLowerCase()
  // Two at once with one address: the second waits here and is then told.
  await lockWord(tx, `account/${email}`)
  if (await tx.user.findUnique({ where: { email } }))
    throw new RoomError(
      'conflict',
      'There is an account with this email already. Sign in with it, then open the link again.',
    )
  const userId = uuidv7()
  await tx.user.create({ data: { id: userId, name: account.name, email, createdAt: now, updatedAt: now } })
  await tx.account.create({
    data: {
      id: uuidv7(),
      userId,
      accountId: userId,
      providerId: 'credential',
      password: account.passwordHash,
      createdAt: now,
      updatedAt: now,
    },
  })
  return userId
}
