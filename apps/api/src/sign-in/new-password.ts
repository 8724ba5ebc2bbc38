import * as room from '@fryward/room'
import { assertUncommon } from './common-passwords.ts'
import { type Doorkeeping, knockOf } from './doorkeeping.ts'
import { hashPassword } from './password-hash.ts'

type Asked = { email: string; sendsMail: boolean }

export async function askForNewPassword(keeping: Doorkeeping, { email, sendsMail }: Asked): Promise<void> {
  if (!sendsMail)
    throw new room.RoomError(
      'wrong_state',
      'This server sends no mail. Ask its owner for a link, or for `npm run reset-password` on the machine that it runs on.',
    )
  await room.askForNewPassword({ ctx: keeping.contextFor(), knock: knockOf(keeping, email) })
}

type Given = { token: string; password: string }

/** Hashing is made to be slow: it is done for whoever has brought a link that is good. */
export async function giveNewPassword(
  keeping: Doorkeeping,
  ctx: room.Context,
  { token, password }: Given,
): Promise<void> {
  await room.getPasswordReset({ ctx, token })
  assertUncommon(password)
  const knock = knockOf(keeping, '')
  const { email } = await room.giveNewPassword({ ctx, token, passwordHash: await hashPassword(password), knock })
  keeping.forgetSessions()
  // Whoever guesses at the account meanwhile keeps its own person out of this browser no longer.
  keeping.known.mark(keeping.reply, email)
}
