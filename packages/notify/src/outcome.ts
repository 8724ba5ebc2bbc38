/**
 * What became of a message that was handed over once. `unknown`: it went out, and whether it arrived nobody said; it is
 * never sent again by itself, so that nobody is told the same thing twice by accident.
 */
export type Outcome =
  | { state: 'sent'; detail: string }
  | { state: 'failed'; detail: string; isFinal: boolean; isGone?: boolean }
  | { state: 'unknown'; detail: string }

/** Long enough for a slow server on the other side of the world, short enough for the next minute. */
export const patienceMs = 20_000

const mostShown = 200

/** What the other side said, as one line that fits on a page. */
export const oneLine = (text: string): string => text.replaceAll(/\s+/g, ' ').trim().slice(0, mostShown)

export const messageOf = (error: unknown): string => oneLine(error instanceof Error ? error.message : String(error))

const neverConnected = new Set([
  'ECONNREFUSED',
  'ENOTFOUND',
  'EAI_AGAIN',
  'EHOSTUNREACH',
  'ENETUNREACH',
  'EADDRNOTAVAIL',
  'ENOTALLOWED',
])

/** Whether an error says for sure that nothing was handed over. */
export const isBeforeSending = (error: unknown): boolean =>
  typeof error === 'object' &&
  error !== null &&
  'code' in error &&
  (neverConnected.has(String(error.code)) || String(error.code).startsWith('ERR_TLS') || isCertificate(error.code))

const isCertificate = (code: unknown): boolean => /CERT|SELF_SIGNED|UNABLE_TO_/.test(String(code))

/** What an HTTP status says of a message: too busy and broken may be tried again, the rest may not. */
export function outcomeOfStatus(status: number, said: string): Outcome {
  const detail = oneLine(`${status} ${said}`)
  if (status >= 200 && status < 300) return { state: 'sent', detail }
  const isGone = status === 404 || status === 410
  return { state: 'failed', detail, isFinal: status < 500 && status !== 429 && status !== 408, isGone }
}
