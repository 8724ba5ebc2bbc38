import { assertMayKnock, type Context, endOtherSessions, type Knock, RoomError, recordKnock } from '@fryward/room'
import { type BodyOf, type ResponseOf, SecondFactorSchema } from '@fryward/shared'
import type { Database } from '@fryward/store'
import { z } from 'zod'
import { assertUncommon } from './common-passwords.ts'
import type { knownBrowser } from './known-browser.ts'
import { browserOf, type Passing, passToLibrary } from './pass-to-library.ts'

/** What only the front door can do for a request: give its browser a session, take it away, and look at passwords. */
export type Door = {
  signIn: (credentials: BodyOf<'signIn'>) => Promise<ResponseOf<'signIn'>>
  signInWithCode: (code: string) => Promise<void>
  signOut: () => Promise<void>
  /** Ends every other session too. */
  changePassword: (ctx: Context, passwords: BodyOf<'changePassword'>) => Promise<void>
  beginSecondFactor: (password: string) => Promise<ResponseOf<'beginSecondFactor'>>
  confirmSecondFactor: (code: string) => Promise<void>
  endSecondFactor: (password: string) => Promise<void>
  /** Sessions were ended: nobody is taken for signed in by what was looked up before. */
  forgetSessions: () => void
}

export type Doorkeeping = Passing & {
  database: Database
  known: ReturnType<typeof knownBrowser>
  contextFor: () => Context
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
    beginSecondFactor: async (password) => {
      const { totpURI: uri, backupCodes: recoveryCodes } = BegunSchema.parse(
        await pass('/two-factor/enable', { password }),
      )
      return SecondFactorSchema.parse({ uri, recoveryCodes })
    },
    confirmSecondFactor: async (code) => void (await pass('/two-factor/verify-totp', { code })),
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
  const email = await emailHalfwayIn(keeping)
  const knock = email === null ? null : knockOf(keeping, email)
  if (knock) await assertMayKnock({ ctx, knock })
  try {
    const path = /^\d{6}$/.test(code) ? '/two-factor/verify-totp' : '/two-factor/verify-backup-code'
    await passToLibrary(keeping, path, { code })
    keeping.forgetSessions()
    if (!knock) return
    await recordKnock({ ctx, knock, outcome: 'signed_in' })
    keeping.known.mark(keeping.reply, knock.email)
  } catch (error) {
    if (knock && isWrong(error)) await recordKnock({ ctx, knock, outcome: 'wrong_code' })
    throw error
  }
}

const isWrong = (error: unknown): boolean =>
  error instanceof RoomError && (error.code === 'not_signed_in' || error.code === 'invalid_input')

const knockOf = ({ request, known }: Doorkeeping, email: string): Knock => ({
  email,
  address: request.ip,
  browser: browserOf(request),
  isKnown: known.has(request, email),
})

/** Whose password was right a moment ago, by the cookie that the first step has set; null when there is none of ours. */
async function emailHalfwayIn({ request, database }: Doorkeeping): Promise<string | null> {
  const cookie = /(?:^|;\s*)(?:__Secure-)?fryward\.two_factor=([^;]+)/.exec(request.headers.cookie ?? '')?.[1]
  const identifier = cookie?.split('.')[0]
  if (!identifier) return null
  const begun = await database.prisma.verification.findFirst({ where: { identifier } })
  const user = begun && (await database.prisma.user.findUnique({ where: { id: begun.value } }))
  return user?.email.toLowerCase() ?? null
}
