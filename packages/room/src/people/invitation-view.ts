import type { Invitation } from '@fryward/shared'
import type { Prisma } from '@fryward/store'
import { nameOf } from './user-names.ts'

export type InvitationRow = Prisma.InvitationGetPayload<object>

export function toInvitation(row: InvitationRow, names: ReadonlyMap<string, string>): Invitation {
  return {
    id: row.id,
    role: row.role,
    createdByName: nameOf(names, row.createdBy),
    createdAt: row.createdAt.toISOString(),
    expiresAt: row.expiresAt.toISOString(),
    acceptedAt: row.acceptedAt?.toISOString() ?? null,
    acceptedByName: row.acceptedBy ? nameOf(names, row.acceptedBy) : null,
    revokedAt: row.revokedAt?.toISOString() ?? null,
  }
}
