import * as z from 'zod/mini'
import { EmailSchema, PasswordSchema, UserIdSchema } from './person.ts'
import { InstantSchema } from './primitives.ts'
import { text, trimmedText } from './shapes.ts'

/** The password that somebody has now; shorter ones than new ones may be are wrong like any other. */
const CurrentPasswordSchema = text({ shortest: 1, longest: 128, wanted: 'the password that you have now' })

export const ChangePasswordSchema = z.strictObject({ current: CurrentPasswordSchema, wanted: PasswordSchema })
export const ConfirmWithPasswordSchema = z.strictObject({ password: CurrentPasswordSchema })

/** Six digits from an authenticator (RFC 6238), or one of the recovery codes. */
export const CodeSchema = z.strictObject({
  code: trimmedText({ shortest: 6, longest: 40, wanted: 'the six digits, or a recovery code' }),
})

/** The password, and the code of whoever has a second factor. */
export const SignInAgainSchema = z.strictObject({
  password: CurrentPasswordSchema,
  code: z.optional(trimmedText({ shortest: 6, longest: 40, wanted: 'the six digits, or a recovery code' })),
})

export const SignedInSchema = z.object({
  ok: z.literal(true),
  /** The password was right, and the code of the second factor is still to come. */
  asksCode: z.boolean(),
})

/** A browser in which somebody is signed in. */
export const SessionSchema = z
  .object({
    id: UserIdSchema,
    signedInAt: InstantSchema,
    lastSeenAt: InstantSchema,
    address: z.nullable(z.string()),
    browser: z.nullable(z.string()),
    isThisOne: z.boolean(),
  })
  .register(z.globalRegistry, { id: 'Session' })
export type Session = z.infer<typeof SessionSchema>

/** Where a new password is to be asked for, and the new one itself. */
export const AskResetSchema = z.strictObject({ email: EmailSchema })
export const NewPasswordSchema = z.strictObject({ password: PasswordSchema })

/** Whose new password a link gives, and until when. */
export const PasswordResetSchema = z
  .object({ email: z.string(), expiresAt: InstantSchema })
  .register(z.globalRegistry, { id: 'PasswordReset' })

/** For somebody whom no mail reaches; the link is shown this once. */
export const NewResetLinkSchema = z.strictObject({ userId: UserIdSchema })
export const ResetLinkSchema = z
  .object({ link: z.string(), expiresAt: InstantSchema })
  .register(z.globalRegistry, { id: 'ResetLink' })
export type ResetLink = z.infer<typeof ResetLinkSchema>

export const signInOutcomes = [
  ...['signed_in', 'signed_in_again', 'wrong_password', 'code_asked', 'wrong_code'],
  ...['reset_asked', 'reset_not_mailed', 'reset_link_made', 'password_reset'],
] as const
export type SignInOutcome = (typeof signInOutcomes)[number]

/** One try to sign in. */
export const SignInTrySchema = z
  .object({
    id: z.string(),
    at: InstantSchema,
    email: z.string(),
    address: z.string(),
    browser: z.string(),
    outcome: z.enum(signInOutcomes),
  })
  .register(z.globalRegistry, { id: 'SignInTry' })
export type SignInTry = z.infer<typeof SignInTrySchema>

/** What an authenticator reads, as a picture or typed, and codes for the day on which it is lost; shown once. */
export const SecondFactorSchema = z
  .object({ uri: z.string(), recoveryCodes: z.array(z.string()) })
  .register(z.globalRegistry, { id: 'SecondFactor' })
export type SecondFactor = z.infer<typeof SecondFactorSchema>
