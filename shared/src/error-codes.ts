/** The closed list of problem codes with their HTTP status. The API maps them with an exhaustive table. */
export const errorCodes = {
  invalid_input: 400,
  needs_confirmation: 422,
  not_signed_in: 401,
  not_allowed: 403,
  sign_in_again: 403,
  not_found: 404,
  stale_version: 409,
  already_done: 409,
  too_early: 409,
  wrong_state: 409,
  conflict: 409,
  idempotency_mismatch: 409,
  too_late_to_undo: 409,
  too_large: 413,
  unsupported_media_type: 415,
  too_many_requests: 429,
  internal: 500,
  unavailable: 503,
  busy: 503,
  disk_full: 507,
} as const
export type ErrorCode = keyof typeof errorCodes
