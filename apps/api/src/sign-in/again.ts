import { assertMayKnock, type Context, noteSignedInAgain, personOf, RoomError, recordKnock } from '@fryward/room'
import type { BodyOf } from '@fryward/shared'
import { passCode } from './codes.ts'
import { type Doorkeeping, isWrong, knockOf } from './doorkeeping.ts'
import { askLibraryForPassword } from './pass-to-library.ts'

/** Looks at the password of whoever is signed in, and at a code where they have a second factor; notes that it was they. */
export async function signInAgain(
  keeping: Doorkeeping,
  ctx: Context,
  { password, code }: BodyOf<'signInAgain'>,
): Promise<void> {
  const userId = personOf(ctx.actor)
  const { email, twoFactorEnabled } = await keeping.database.prisma.user.findUniqueOrThrow({ where: { id: userId } })
  const knock = knockOf(keeping, email.toLowerCase())
  await assertMayKnock({ ctx, knock })
  if (twoFactorEnabled && code === undefined)
    throw new RoomError('invalid_input', 'Type the code that your authenticator shows too.', {
      fields: [{ path: 'code', message: 'Give the six digits, or a recovery code.' }],
    })
  let looksAt: 'wrong_password' | 'wrong_code' = 'wrong_password'
  try {
    await askLibraryForPassword(keeping, password)
    looksAt = 'wrong_code'
    if (twoFactorEnabled && code !== undefined) await passCode(keeping, { ctx, userId, code })
  } catch (error) {
    if (isWrong(error)) await recordKnock({ ctx, knock, outcome: looksAt })
    throw error
  }
  await noteSignedInAgain({ ctx })
  await recordKnock({ ctx, knock, outcome: 'signed_in_again' })
}
