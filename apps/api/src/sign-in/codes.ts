import { createHmac } from 'node:crypto'
import { type Context, giveCodeBack, useCode } from '@fryward/room'
import type { Doorkeeping } from './doorkeeping.ts'
import { passToLibrary } from './pass-to-library.ts'

/** As an authenticator shows them; anything else that is typed for a code is taken for a recovery code. */
const isOfAuthenticator = (code: string): boolean => /^\d{6}$/.test(code)

/** `withoutSession`: of whoever is halfway in, and not of somebody who may be signed in here already. */
type Typed = { ctx: Context; userId: string; code: string; withoutSession?: boolean }

/**
 * Has the library look at a code, which is good once: it knows by itself that a recovery code was used, and we that one of
 * an authenticator was (ASVS 4.0.3, 2.8.4).
 */
export async function passCode(keeping: Doorkeeping, { ctx, userId, code, withoutSession }: Typed): Promise<void> {
  const passing = { ...keeping, withoutSession }
  if (!isOfAuthenticator(code)) {
    await passToLibrary(passing, '/two-factor/verify-backup-code', { code })
    return
  }
  const codeHash = createHmac('sha256', keeping.secret).update(`used code ${userId} ${code}`).digest('base64url')
  await useCode({ ctx, userId, codeHash })
  try {
    await passToLibrary(passing, '/two-factor/verify-totp', { code })
  } catch (error) {
    await giveCodeBack({ ctx, userId, codeHash })
    throw error
  }
}
