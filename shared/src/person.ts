import { z } from 'zod'
import { IdSchema, InstantSchema, NameSchema, TimeZoneSchema } from './primitives.ts'
import { roles } from './vocabulary.ts'

export const RoleSchema = z.enum(roles)
export const UserIdSchema = z.string().min(1).max(64)
export const EmailSchema = z.email().max(254)
/** Length only, as NIST SP 800-63B (2017, section 5.1.1) asks; no rules about character kinds. */
export const PasswordSchema = z.string().min(10, 'a password of at least 10 characters').max(128)

export const PersonSchema = z
  .object({ userId: UserIdSchema, name: z.string(), email: z.string(), role: RoleSchema, joinedAt: InstantSchema })
  .meta({ id: 'Person' })
export type Person = z.infer<typeof PersonSchema>

export const MeSchema = z
  .object({
    user: z.object({ id: UserIdSchema, name: z.string(), email: z.string() }),
    canCreateRooms: z.boolean(),
    /** Claimed this server: may take a backup of all of it. */
    ownsServer: z.boolean(),
    rooms: z.array(z.object({ id: IdSchema, name: z.string(), role: RoleSchema, timeZone: TimeZoneSchema })),
  })
  .meta({ id: 'Me' })
export type Me = z.infer<typeof MeSchema>

/** What a stranger may know about this server. */
export const ServerStatusSchema = z
  .object({ isClaimed: z.boolean(), hasDemoRoom: z.boolean(), version: z.string() })
  .meta({ id: 'ServerStatus' })
export type ServerStatus = z.infer<typeof ServerStatusSchema>

export const ClaimSchema = z.strictObject({
  code: z.string().trim().min(4).max(64),
  name: NameSchema,
  email: EmailSchema,
  password: PasswordSchema,
})
export type Claim = z.infer<typeof ClaimSchema>

export const ChangeRoleSchema = z.strictObject({ role: RoleSchema })

export const InvitationSchema = z
  .object({
    id: IdSchema,
    role: RoleSchema,
    createdByName: z.string(),
    createdAt: InstantSchema,
    expiresAt: InstantSchema,
    acceptedAt: InstantSchema.nullable(),
    acceptedByName: z.string().nullable(),
    revokedAt: InstantSchema.nullable(),
  })
  .meta({ id: 'Invitation' })
export type Invitation = z.infer<typeof InvitationSchema>

export const NewInvitationSchema = z.strictObject({
  role: RoleSchema,
  daysValid: z.number().int().min(1).max(30).default(7),
})
/** The link carries the only copy of the token; the server keeps its hash. */
export const CreatedInvitationSchema = InvitationSchema.extend({ link: z.string() }).meta({ id: 'CreatedInvitation' })
export type CreatedInvitation = z.infer<typeof CreatedInvitationSchema>

export const InvitationPreviewSchema = z
  .object({ roomName: z.string(), role: RoleSchema, invitedByName: z.string(), expiresAt: InstantSchema })
  .meta({ id: 'InvitationPreview' })
export const JoinSchema = z.strictObject({ name: NameSchema, email: EmailSchema, password: PasswordSchema })
export const TokenSchema = z.string().min(16).max(128)
