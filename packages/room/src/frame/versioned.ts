import { RoomError } from '../errors.ts'

/** Refuses a change made from a version that is no longer the newest, and says what the thing is now. */
export function assertFresh<T extends { version: number }>(current: T, seenVersion: number, name: string): void {
  if (current.version !== seenVersion)
    throw new RoomError(
      'stale_version',
      `${name} was changed by somebody else meanwhile. Look at it as it is now and change it again.`,
      { current },
    )
}

/** Only what was sent: an absent field stays as it is. */
export function definedFields<T extends Record<string, unknown>>(fields: T): Partial<T> {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as Partial<T>
}
