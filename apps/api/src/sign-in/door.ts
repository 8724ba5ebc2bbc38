import {
  assertMayKnock,
  type Context,
  createResetLink,
  endOtherSessions,
  personOf,
  RoomError,
  recordKnock,
} from '@fryward/room'
import { type BodyOf, type ResponseOf, SecondFactorSchema } from '@fryward/shared'
import { z } from 'zod'
import { signInAgain } from './again.ts'
import { passCode } from './codes.ts'
import { assertUncommon } from './common-passwords.ts'
import { type Doorkeeping, isWrong, knockOf } from './doorkeeping.ts'
import { askForNewPassword, giveNewPassword } from './new-password.ts'
import { passToLibrary } from './pass-to-library.ts'

/** What only the front door can do for a request: give its browser a session, take it away, and look at passwords. */
export type Door = {
  signIn: (credentials: BodyOf<'signIn'>) => Promise<ResponseOf<'signIn'>>
  signInWithCode: (code: string) => Promise<void>
  /** What matters is open to this session for a while. */
  signInAgain: (ctx: Context, typed: BodyOf<'signInAgain'>) => Promise<void>
  signOut: () => Promise<void>
  /** Ends every other session too. */
  changePassword: (ctx: Context, passwords: BodyOf<'changePassword'>) => Promise<void>
  /** Whether anything comes of it is not said: nobody learns here who has an account. */
  askForNewPassword: (email: string, sendsMail: boolean) => Promise<void>
  giveNewPassword: (ctx: Context, given: { token: string; password: string }) => Promise<void>
  createResetLink: (
    ctx: Context,
    asked: { userId: string; publicUrl: string },
  ) => Promise<ResponseOf<'createResetLink'>>
  beginSecondFactor: (password: string) => Promise<ResponseOf<'beginSecondFactor'>>
  confirmSecondFactor: (ctx: Context, code: string) => Promise<void>
  endSecondFactor: (password: string) => Promise<void>
  /** Sessions were ended: nobody is taken for signed in by what was looked up before. */
  forgetSessions: () => void
}

const SignedInSchema = z.object({ twoFactorRedirect: z.boolean().optional() })
const BegunSchema = z.object({ totpURI: z.string(), backupCodes: z.array(z.string()) })

export function openDoor(keeping: Doorkeeping): Door {
  const { forgetSessions } = keeping
  const pass = async (path: string, body: object) => {
    const answer = await passToLibrary(keeping, path, body)
    // Whose session it is may have changed; afterwards, as another request may have asked meanwhile.
    forgetSessions()
    return answer
  }
  return {
    signIn: (credentials) => signIn(keeping, credentials),
    signInWithCode: (code) => signInWithCode(keeping, code),
    signInAgain: (ctx, typed) => signInAgain(keeping, ctx, typed),
    signOut: async () => {
      await pass('/sign-out', {})
      // What the browser kept of the rooms goes with the session (Clear Site Data, W3C 2017).
      keeping.reply.header('clear-site-data', '"cache"')
    },
    changePassword: async (ctx, { current, wanted }) => {
      assertUncommon(wanted, 'wanted')
      await pass('/change-password', { currentPassword: current, newPassword: wanted })
      await endOtherSessions({ ctx })
      forgetSessions()
    },
    askForNewPassword: (email, sendsMail) => askForNewPassword(keeping, { email: email.toLowerCase(), sendsMail }),
    giveNewPassword: (ctx, given) => giveNewPassword(keeping, ctx, given),
    createResetLink: (ctx, asked) => createResetLink({ ctx, ...asked, knock: knockOf(keeping, '') }),
    beginSecondFactor: async (password) => {
      const { totpURI: uri, backupCodes: recoveryCodes } = BegunSchema.parse(
        await pass('/two-factor/enable', { password }),
      )
      return SecondFactorSchema.parse({ uri, recoveryCodes })
    },
    confirmSecondFactor: async (ctx, code) => {
      await passCode(keeping, { ctx, userId: personOf(ctx.actor), code })
      forgetSessions()
    },
    endSecondFactor: async (password) => void (await pass('/two-factor/disable', { password })),
    forgetSessions,
  }
}

async function signIn(keeping: Doorkeeping, credentials: BodyOf<'signIn'>): Promise<ResponseOf<'signIn'>> {
  const { request, reply, known } = keeping
  const ctx = keeping.contextFor()
  const email = credentials.email.toLowerCase()
  const knock = knockOf(keeping, email)
  await assertMayKnock({ ctx, knock })
  try {
    const answer = SignedInSchema.parse(await passToLibrary(keeping, '/sign-in/email', credentials))
    keeping.forgetSessions()
    const asksCode = answer.twoFactorRedirect === true
    await recordKnock({ ctx, knock, outcome: asksCode ? 'code_asked' : 'signed_in' })
    if (!asksCode && !known.has(request, email)) known.mark(reply, email)
    return { ok: true, asksCode }
  } catch (error) {
    if (isWrong(error)) await recordKnock({ ctx, knock, outcome: 'wrong_password' })
    throw error
  }
}

async function signInWithCode(keeping: Doorkeeping, code: string): Promise<void> {
  const ctx = keeping.contextFor()
  const user = await findHalfwayIn(keeping)
  if (!user)
    throw new RoomError('not_signed_in', 'The first step is too long ago. Sign in again with email and password.')
  const knock = knockOf(keeping, user.email.toLowerCase())
  await assertMayKnock({ ctx, knock })
  try {
    await passCode(keeping, { ctx, userId: user.id, code, withoutSession: true })
    keeping.forgetSessions()
    await recordKnock({ ctx, knock, outcome: 'signed_in' })
    keeping.known.mark(keeping.reply, knock.email)
  } catch (error) {
    if (isWrong(error)) await recordKnock({ ctx, knock, outcome: 'wrong_code' })
    throw error
  }
}

/** Whose password was right a moment ago, by the cookie that the first step has set; null when there is none of ours. */
async function findHalfwayIn({ request, database }: Doorkeeping): Promise<{ id: string; email: string } | null> {
  const cookie = /(?:^|;\s*)(?:__Secure-)?fryward\.two_factor=([^;]+)/.exec(request.headers.cookie ?? '')?.[1]
  const identifier = cookie?.split('.')[0]
  if (!identifier) return null
  const begun = await database.prisma.verification.findFirst({ where: { identifier } })
  return begun && database.prisma.user.findUnique({ where: { id: begun.value } })
}
