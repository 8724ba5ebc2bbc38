import type { Transaction } from '@fryward/store'
import { uuidv7 } from 'uuidv7'

type NewPassword = { userId: string; passwordHash: string; now: string }

/** Gives an account another password, in the shape that the sign-in library reads; nobody who is in or halfway in stays so. */
export async function setPassword(tx: Transaction, { userId, passwordHash, now }: NewPassword): Promise<void> {
  const { count } = await tx.account.updateMany({
    where: { userId, providerId: 'credential' },
    data: { password: passwordHash, updatedAt: now },
  })
  if (count === 0)
    await tx.account.create({
      data: {
        ...{ id: uuidv7(), userId, accountId: userId, providerId: 'credential', password: passwordHash },
        ...{ createdAt: now, updatedAt: now },
      },
    })
  await tx.session.deleteMany({ where: { userId } })
  await tx.verification.deleteMany({ where: { value: userId } })
  await tx.passwordReset.deleteMany({ where: { userId } })
}
