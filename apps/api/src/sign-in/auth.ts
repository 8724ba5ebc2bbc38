import type { Database } from '@fryward/store'
import { betterAuth } from 'better-auth'
import { prismaAdapter } from 'better-auth/adapters/prisma'
import { twoFactor } from 'better-auth/plugins/two-factor'
import { uuidv7 } from 'uuidv7'

/** The header that carries the client's address to better-auth; always overwritten here, whatever the client sent. */
export const clientAddressHeader = 'x-fryward-client'

export type Auth = ReturnType<typeof createAuth>

type AuthOptions = {
  database: Database
  secret: string
  publicUrl: string
  /** Told what the library could not do, and why; who asked is answered besides. */
  onError: (message: string, details: unknown[]) => void
}

/**
 * Sign-in by email and password. Accounts are made by claiming the server or by an invitation, in their own
 * transaction, so better-auth's sign-up is off; so is every other route of its own, but for those that the door calls.
 * Limits live in the database and hold across processes.
 */
export function createAuth({ database, secret, publicUrl, onError }: AuthOptions) {
  return betterAuth({
    appName: 'Fryward',
    baseURL: publicUrl,
    basePath: '/api/auth',
    secret,
    database: prismaAdapter(database.prisma, { provider: 'postgresql' }),
    emailAndPassword: { enabled: true, disableSignUp: true, minPasswordLength: 10, maxPasswordLength: 128 },
    session: { expiresIn: 60 * 60 * 24 * 30, updateAge: 60 * 60 * 24 },
    rateLimit: {
      enabled: true,
      storage: 'database',
      modelName: 'rateLimit',
      window: 60,
      max: 120,
      customRules: { '/sign-in/email': { window: 60, max: 8 }, '/get-session': false },
    },
    advanced: {
      cookiePrefix: 'fryward',
      useSecureCookies: publicUrl.startsWith('https:'),
      database: { generateId: () => uuidv7() },
      ipAddress: { ipAddressHeaders: [clientAddressHeader] },
    },
    // Six digits every half minute (RFC 6238), and codes for the day on which the phone is lost.
    plugins: [twoFactor({ issuer: 'Fryward' })],
    telemetry: { enabled: false },
    // A wrong password is no event of the server; its answer and the limit above are all there is to it.
    logger: { level: 'error', log: (_level, message, ...details) => onError(message, details) },
  })
}
