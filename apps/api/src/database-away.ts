// PostgreSQL's classes 08 (connection), 53 (no room for another) and 57P (shutting down, cut off), a deadlock that it
// broke up, and what the network, a stream that was cut off, and Prisma say of the same. Source: PostgreSQL 18 manual, appendix A;
// Node.js, Errors; Prisma error reference.
const awayCodes =
  /^(08\w{3}|53\w{3}|57P\w{2}|40001|40P01|ECONNREFUSED|ECONNRESET|EPIPE|ETIMEDOUT|ENOTFOUND|ERR_STREAM_\w+|P1001|P1002|P1008|P1017|P2024|P2028|P2034)$/
// Where Prisma has not put a code of its own on it yet. Source: mapSocketError in adapter-pg 7.
const awayKinds = /^(ConnectionClosed|DatabaseNotReachable|SocketTimeout|TooManyConnections)$/
// What pg says in words only. Source: lib/client.js of pg 8 and index.js of pg-pool 3.
const awayMessages =
  /Connection terminated|is not queryable|timeout exceeded when trying to connect|pool after calling end|Query read timeout|Can't reach database server|connection is closed|not currently accepting/i

// PostgreSQL's disk_full, and what the file system says of itself. Source: PostgreSQL 18 manual, appendix A; errno(3).
const fullCodes = /^(53100|ENOSPC|EDQUOT)$/
const nothing = /(?!)/

/** Whether an error says that the database did not answer, wherever in it that is said; trying again may help then. */
export const isDatabaseAway = (error: unknown): boolean =>
  says(error, { codes: awayCodes, messages: awayMessages, kinds: awayKinds })

/** Whether an error says that there is no room on the disk, for rows or for files. */
export const isDiskFull = (error: unknown): boolean =>
  says(error, { codes: fullCodes, messages: nothing, kinds: nothing })

function says(error: unknown, told: { codes: RegExp; messages: RegExp; kinds: RegExp }, depth = 6): boolean {
  if (error === null || typeof error !== 'object' || depth === 0) return false
  const { code, kind, message, cause, meta, driverAdapterError, originalCode, errors }: Record<string, unknown> = {
    ...error,
    // Own, but not enumerable, on errors.
    ...(error instanceof Error ? { message: error.message, cause: error.cause } : {}),
  }
  if ([code, originalCode].some((each) => typeof each === 'string' && told.codes.test(each))) return true
  if (typeof message === 'string' && told.messages.test(message)) return true
  if (typeof kind === 'string' && told.kinds.test(kind)) return true
  const inner = [cause, meta, driverAdapterError, ...(Array.isArray(errors) ? errors : [])]
  return inner.some((each) => says(each, told, depth - 1))
}
