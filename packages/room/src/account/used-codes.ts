import type { Context } from '../context.ts'
import { RoomError } from '../errors.ts'

// A code shows for half a minute and is taken for one more before and after it (RFC 6238, section 5.2).
const keptSeconds = 120

/**
 * Marks a code of somebody's authenticator as typed. Of two who type it at the same moment one is refused.
 * @param codeHash - under a key, so that no code can be worked out from what is kept.
 * @throws RoomError `invalid_input` where it was typed before.
 */
export async function useCode({
  ctx: { database, now },
  userId,
  codeHash,
}: {
  ctx: Context
  userId: string
  codeHash: string
}): Promise<void> {
  const over = new Date(Date.parse(now) - keptSeconds * 1000)
  const taken = await database.prisma.$executeRaw`
    INSERT INTO used_code (user_id, code_hash, used_at) VALUES (${userId}, ${codeHash}, ${new Date(now)})
    ON CONFLICT (user_id, code_hash) DO UPDATE SET used_at = excluded.used_at WHERE used_code.used_at < ${over}`
  if (taken === 0)
    throw new RoomError(
      'invalid_input',
      'This code was used just now, and each is good once. Wait for the next one, at most half a minute, and type that.',
    )
}

/** A code that opened nothing is not used up. */
export async function giveCodeBack({
  ctx,
  ...code
}: {
  ctx: Context
  userId: string
  codeHash: string
}): Promise<void> {
  await ctx.database.prisma.usedCode.deleteMany({ where: code })
}

export async function forgetUsedCodes({ database, now }: Context): Promise<number> {
  const over = new Date(Date.parse(now) - keptSeconds * 1000)
  return (await database.prisma.usedCode.deleteMany({ where: { usedAt: { lt: over } } })).count
}
