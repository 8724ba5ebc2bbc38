import type { Role } from './vocabulary.ts'

/**
 * What a role may do in a room; `anyone` needs no sign-in, `signed_in` and `own_server` (whoever claimed it) no room, and
 * `device` is for what brings a token of its own.
 */
export const permissions = [
  'anyone',
  'signed_in',
  'device',
  'read',
  'sign_off',
  'record',
  'manage',
  'own',
  'own_server',
] as const
export type Permission = (typeof permissions)[number]

/** Owners own, caretakers manage, stand-ins sign off and record, viewers read. */
export const permissionsOfRole = {
  owner: ['read', 'sign_off', 'record', 'manage', 'own'],
  caretaker: ['read', 'sign_off', 'record', 'manage'],
  stand_in: ['read', 'sign_off', 'record'],
  viewer: ['read'],
} as const satisfies Record<Role, readonly Permission[]>
