import { timingSafeEqual } from 'node:crypto'
import { roles, type ServerStatus } from '@fryward/shared'
import { inTransaction, lockWord, type Transaction } from '@fryward/store'
import type { Context } from '../context.ts'
import { RoomError } from '../errors.ts'
import { hashToken, newClaimCode, normaliseClaimCode } from '../frame/secrets.ts'
import { insertAccount, type NewAccount } from '../people/insert-account.ts'

/**
 * Makes sure that a server without an owner has a one-time code, and returns it to be shown where only the person who
 * started the server can read it. A code kept from before stays the one, so that a restart between reading and typing
 * it changes nothing. Null once the server is claimed.
 */
export async function prepareClaim({ ctx, kept }: { ctx: Context; kept: string | null }): Promise<string | null> {
  return inTransaction(ctx.database, async (tx) => {
    await lockWord(tx, 'server-claim')
    const server = await tx.server.findUnique({ where: { id: 1 } })
    if (server?.claimedAt) return null
    if (kept !== null && server?.claimCodeHash === hashToken(normaliseClaimCode(kept))) return kept
    const code = newClaimCode()
    const claimCodeHash = hashToken(normaliseClaimCode(code))
    await tx.server.upsert({ where: { id: 1 }, create: { id: 1, claimCodeHash }, update: { claimCodeHash } })
    return code
  })
}

// Addresses that nobody can have (RFC 2606, section 3); a stranger may read these, and nobody else's.
const inventedEnding = '@demo.example'

/** Whether a code would claim the server now; asked before anything costly is done for whoever brings it. */
export async function assertClaimable({ ctx, code }: { ctx: Context; code: string }): Promise<void> {
  await assertMayClaim(ctx.database.prisma, code)
}

async function assertMayClaim(tx: Transaction, code: string): Promise<void> {
  const server = await tx.server.findUnique({ where: { id: 1 } })
  if (!server || server.claimedAt)
    throw new RoomError('wrong_state', 'This server has an owner. Sign in, or ask the owner for an invitation.')
  const given = Buffer.from(hashToken(normaliseClaimCode(code)))
  if (!timingSafeEqual(given, Buffer.from(server.claimCodeHash ?? ''.padEnd(given.length))))
    throw new RoomError('not_allowed', 'That is not the code. It is printed when the server starts, until it is used.')
}

/** The first owner claims the server with the one-time code; the code is then used up. */
export async function claimServer({
  ctx,
  code,
  account,
}: {
  ctx: Context
  code: string
  account: NewAccount
}): Promise<{ ok: true }> {
  return inTransaction(ctx.database, async (tx) => {
    await lockWord(tx, 'server-claim')
    await assertMayClaim(tx, code)
    const userId = await insertAccount(tx, { account, now: ctx.now })
    await tx.server.update({ where: { id: 1 }, data: { claimedAt: ctx.now, claimedBy: userId, claimCodeHash: null } })
    return { ok: true }
  })
}

export async function getServerStatus({
  ctx,
  ...ofServer
}: {
  ctx: Context
  version: string
  sendsMail: boolean
}): Promise<ServerStatus> {
  const { prisma } = ctx.database
  const server = await prisma.server.findUnique({ where: { id: 1 } })
  const demo = await prisma.room.findFirst({
    where: { isDemo: true },
    select: { memberships: { include: { user: true }, where: { user: { email: { endsWith: inventedEnding } } } } },
  })
  const demoPeople = (demo?.memberships ?? [])
    .map(({ user, role }) => ({ name: user.name, email: user.email, role }))
    .sort((one, other) => roles.indexOf(one.role) - roles.indexOf(other.role) || (one.name < other.name ? -1 : 1))
  return { isClaimed: server?.claimedAt != null, hasDemoRoom: demo !== null, demoPeople, ...ofServer }
}
