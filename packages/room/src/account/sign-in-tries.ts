import type { SignInOutcome, SignInTry } from '@fryward/shared'
import type { Transaction } from '@fryward/store'
import { uuidv7 } from 'uuidv7'
import type { Context } from '../context.ts'
import { RoomError } from '../errors.ts'

/** What is known of a try to sign in before its password is looked at. */
export type Knock = { email: string; address: string; browser: string; isKnown: boolean }

// NIST SP 800-63B (2017), section 5.2.2 allows at most 100 wrong tries in a row; a person mistypes a few times. Counted
// over a quarter of an hour and from unknown browsers alone: whoever signed in to the account before still gets in while
// strangers guess at it.
const wrongFromStrangers = 20
const withinMinutes = 15

const keptDays = 90
const wrong: SignInOutcome[] = ['wrong_password', 'wrong_code']

/** @throws RoomError `too_many_requests` where strangers have guessed at this account for too often just now. */
export async function assertMayKnock({ ctx, knock }: { ctx: Context; knock: Knock }): Promise<void> {
  if (knock.isKnown) return
  const since = new Date(Date.parse(ctx.now) - withinMinutes * 60_000)
  const tries = await ctx.database.prisma.signInTry.count({
    where: { email: knock.email, at: { gt: since }, isKnown: false, outcome: { in: wrong } },
  })
  if (tries >= wrongFromStrangers)
    throw new RoomError(
      'too_many_requests',
      'Too many wrong tries for this email. Wait a quarter of an hour, or sign in on a device where you were signed in before.',
    )
}

type Try = { now: string; knock: Knock; outcome: SignInOutcome }

export async function insertTry(tx: Transaction, { now, knock, outcome }: Try): Promise<void> {
  await tx.signInTry.create({ data: { id: uuidv7(), at: now, outcome, ...knock } })
}

export async function recordKnock({
  ctx,
  knock,
  outcome,
}: {
  ctx: Context
  knock: Knock
  outcome: SignInOutcome
}): Promise<void> {
  await insertTry(ctx.database.prisma, { now: ctx.now, knock, outcome })
}

export async function listSignInTries({ ctx, email }: { ctx: Context; email?: string }): Promise<SignInTry[]> {
  const rows = await ctx.database.prisma.signInTry.findMany({
    where: { email },
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
    take: 200,
  })
  return rows.map(({ isKnown: _isKnown, ...row }) => ({
    ...row,
    at: row.at.toISOString(),
    outcome: row.outcome as SignInOutcome,
  }))
}

export async function forgetOldSignInTries(ctx: Context): Promise<number> {
  const before = new Date(Date.parse(ctx.now) - keptDays * 86_400_000)
  return (await ctx.database.prisma.signInTry.deleteMany({ where: { at: { lt: before } } })).count
}
