import * as z from 'zod/mini'
import { IdSchema, InstantSchema, NameSchema, TimeZoneSchema } from './primitives.ts'
import { atMost, text, trimmedText, wholeBetween, withDefault } from './shapes.ts'
import { roles } from './vocabulary.ts'

export const RoleSchema = z.enum(roles)
export const UserIdSchema = text({ shortest: 1, longest: 64 })
export const EmailSchema = z.email().check(atMost(254))
/** Length only, as NIST SP 800-63B (2017, section 5.1.1) asks; no rules about character kinds. */
export const PasswordSchema = text({ shortest: 10, longest: 128, wanted: 'a password of at least 10 characters' })

// Control characters, line ends, and marks that nobody sees or that turn the direction of what is written after them: with
// these a name passes for another, or garbles the sentence it stands in. Joiners stay: scripts and emoji need them.
// Source: Unicode 16, UAX #9 (directional formatting characters) and general categories Cc, Zl, Zp.
const hiddenMarks =
  /[\p{Cc}\p{Zl}\p{Zp}\u00ad\u061c\u180e\u200b\u200e\u200f\u202a-\u202e\u2060-\u2064\u2066-\u206f\ufeff]/u

/** What a new person is called; others read it beside everything that person does. */
const NewPersonNameSchema = NameSchema.check(
  z.refine((name) => !hiddenMarks.test(name), 'a name without control characters and marks of direction'),
)

export const PersonSchema = z
  .object({ userId: UserIdSchema, name: z.string(), email: z.string(), role: RoleSchema, joinedAt: InstantSchema })
  .register(z.globalRegistry, { id: 'Person' })
export type Person = z.infer<typeof PersonSchema>

export const MeSchema = z
  .object({
    user: z.object({ id: UserIdSchema, name: z.string(), email: z.string(), hasSecondFactor: z.boolean() }),
    canCreateRooms: z.boolean(),
    /** Claimed this server: may take a backup of all of it. */
    ownsServer: z.boolean(),
    rooms: z.array(z.object({ id: IdSchema, name: z.string(), role: RoleSchema, timeZone: TimeZoneSchema })),
  })
  .register(z.globalRegistry, { id: 'Me' })
export type Me = z.infer<typeof MeSchema>

export const SignInSchema = z.strictObject({
  email: EmailSchema,
  /** Shorter ones are a wrong password like any other. */
  password: text({ shortest: 1, longest: 128, wanted: 'a password' }),
})

/** What a stranger may know about this server. */
export const ServerStatusSchema = z
  .object({
    isClaimed: z.boolean(),
    hasDemoRoom: z.boolean(),
    /** Whoever lives in the demo room alone: invented people, whose passwords stand where the server was started. */
    sendsMail: z.boolean(),
    demoPeople: z.array(z.object({ name: z.string(), email: z.string(), role: RoleSchema })),
    version: z.string(),
  })
  .register(z.globalRegistry, { id: 'ServerStatus' })
export type ServerStatus = z.infer<typeof ServerStatusSchema>

export const ClaimSchema = z.strictObject({
  code: trimmedText({ shortest: 4, longest: 64 }),
  name: NewPersonNameSchema,
  email: EmailSchema,
  password: PasswordSchema,
})

export const ChangeRoleSchema = z.strictObject({ role: RoleSchema })

export const InvitationSchema = z
  .object({
    id: IdSchema,
    role: RoleSchema,
    createdByName: z.string(),
    createdAt: InstantSchema,
    expiresAt: InstantSchema,
    acceptedAt: z.nullable(InstantSchema),
    acceptedByName: z.nullable(z.string()),
    revokedAt: z.nullable(InstantSchema),
  })
  .register(z.globalRegistry, { id: 'Invitation' })
export type Invitation = z.infer<typeof InvitationSchema>

export const NewInvitationSchema = z.strictObject({
  role: RoleSchema,
  daysValid: withDefault(wholeBetween(1, 30), 7),
})
/** The link carries the only copy of the token; the server keeps its hash. */
export const CreatedInvitationSchema = z.extend(InvitationSchema, { link: z.string() }).register(z.globalRegistry, {
  id: 'CreatedInvitation',
})
export type CreatedInvitation = z.infer<typeof CreatedInvitationSchema>

export const InvitationPreviewSchema = z
  .object({ roomName: z.string(), role: RoleSchema, invitedByName: z.string(), expiresAt: InstantSchema })
  .register(z.globalRegistry, { id: 'InvitationPreview' })
export const JoinSchema = z.strictObject({ name: NewPersonNameSchema, email: EmailSchema, password: PasswordSchema })
export const TokenSchema = text({ shortest: 16, longest: 128 })
