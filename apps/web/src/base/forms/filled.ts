/** Only the entries that hold something. */
export const filled = <T extends Record<string, unknown>>(entries: T): Partial<T> =>
  Object.fromEntries(Object.entries(entries).filter(([, value]) => value !== undefined && value !== '')) as Partial<T>
