import { randomUUID } from 'node:crypto'
import { hashPassword } from '@fryward/api/password-hash'
import { createResetLink, recordKnock } from '@fryward/room'
import { SecondFactorSchema } from '@fryward/shared'
import { codeOf, secretIn } from '../authenticator.ts'
import { type RawRequest, send } from '../send.ts'
import { addressFor, inRoom, type Requests, type Writing } from './writing.ts'

export const theirPassword = 'long enough 1'
const theirHash = hashPassword(theirPassword)

/** Whoever asks, with a password of their own and no second factor. */
export async function havePassword({ world, as }: Writing): Promise<string> {
  const { userId } = as
  const now = world.clock.now()
  const password = await theirHash
  await world.database.prisma.twoFactor.deleteMany({ where: { userId } })
  await world.database.prisma.user.update({ where: { id: userId }, data: { twoFactorEnabled: false } })
  await world.database.prisma.account.upsert({
    where: { id: userId },
    create: {
      ...{ id: userId, userId, accountId: userId, providerId: 'credential', password },
      ...{ createdAt: now, updatedAt: now },
    },
    update: { password },
  })
  return theirPassword
}

async function otherSession({ world, as, serial }: Writing): Promise<string> {
  const id = randomUUID()
  const now = new Date()
  await world.database.prisma.session.create({
    data: {
      ...{ id, userId: as.userId, token: randomUUID(), ipAddress: `10.5.0.${serial % 250}`, userAgent: 'A desk' },
      ...{ expiresAt: new Date(now.getTime() + 86_400_000), createdAt: now, updatedAt: now },
    },
  })
  return id
}

export async function knocked({ world, as }: Writing): Promise<RawRequest> {
  const knock = { email: as.email, address: '10.6.6.6', browser: 'A phone', isKnown: false }
  await recordKnock({ ctx: world.contextOf(as), knock, outcome: 'wrong_password' })
  return {}
}

/** The secret of an authenticator that whoever asks has begun to set up. */
async function beginSecondFactor(writing: Writing): Promise<string> {
  const { json, text } = await send(writing.world, writing.as, 'beginSecondFactor', {
    body: { password: await havePassword(writing) },
    remoteAddress: addressFor(writing),
  })
  const uri = SecondFactorSchema.safeParse(json).data?.uri
  if (!uri) throw new Error(`beginSecondFactor was refused: ${text}`)
  return secretIn(uri)
}

/** Somebody new who signs in with a second factor. */
export async function withSecondFactor(writing: Writing): Promise<{ email: string; secret: string }> {
  const as = await writing.world.person(`Has a phone ${writing.serial}`)
  const secret = await beginSecondFactor({ ...writing, as })
  const { status, text } = await send(writing.world, as, 'confirmSecondFactor', {
    body: { code: codeOf(secret) },
    remoteAddress: addressFor(writing),
  })
  if (status !== 200) throw new Error(`confirmSecondFactor was refused: ${text}`)
  return { email: as.email, secret }
}

/** The token of a link for a new password. */
async function resetToken({ world, full }: Writing): Promise<string> {
  const { userId } = await world.person('Forgot')
  const { link } = await createResetLink({
    ...{ ctx: world.contextOf(full.owner), userId, publicUrl: 'http://localhost:3000' },
    knock: { address: '10.6.6.6', browser: 'A phone', isKnown: false },
  })
  return link.split('/').at(-1) ?? ''
}

export const accountRequests = {
  changePassword: async (writing) => ({
    body: { current: await havePassword(writing), wanted: 'another one, long enough' },
  }),
  askForNewPassword: (writing) => ({
    body: { email: `forgot-${writing.serial}@example.test` },
    remoteAddress: addressFor(writing),
  }),
  getPasswordReset: async (writing) => ({ params: { token: await resetToken(writing) } }),
  giveNewPassword: async (writing) => ({
    params: { token: await resetToken(writing) },
    body: { password: 'another one, long enough' },
  }),
  createResetLink: async ({ world }) => ({ body: { userId: (await world.person('Forgot too')).userId } }),
  listSessions: () => ({}),
  endSession: async (writing) => ({ params: { sessionId: await otherSession(writing) } }),
  endOtherSessions: () => ({}),
  leaveRoom: async (writing) => {
    // A room keeps an owner, whoever leaves it.
    await writing.world.person(`Stays ${writing.serial}`, { roomId: writing.full.roomId, role: 'owner' })
    return { params: inRoom(writing) }
  },
  listMySignIns: knocked,
  beginSecondFactor: async (writing) => ({ body: { password: await havePassword(writing) } }),
  confirmSecondFactor: async (writing) => ({ body: { code: codeOf(await beginSecondFactor(writing)) } }),
  endSecondFactor: async (writing) => ({ body: { password: await havePassword(writing) } }),
} satisfies Requests
